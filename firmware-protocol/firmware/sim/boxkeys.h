/* The keys of a front-end file that describe the box: what its inputs do and what its EEPROM holds. */
#ifndef SIM_BOXKEYS_H
#define SIM_BOXKEYS_H

#include "frontend.h"
#include "json.h"

bool boxkeys_has(const char *key);
bool boxkeys_take(struct frontend *frontend, const char *name, const char *key, const struct json *value,
                  struct failure *failure);

/* After the last key: what the EEPROM holds of channels that "kept" leaves out. */
void boxkeys_finish(struct frontend *frontend);

#endif
