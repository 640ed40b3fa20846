/* Values of a JSON file, with the words for what is wrong with them. */
#ifndef SIM_FIELDS_H
#define SIM_FIELDS_H

#include "failure.h"
#include "json.h"

bool field_bad(const char *name, const struct json *value, const char *field, const char *expected,
               struct failure *failure);
bool field_number(const char *name, const struct json *value, const char *field, double lowest, double highest,
                  double *number, struct failure *failure);
bool field_object(const char *name, const struct json *value, const char *field, struct failure *failure);
bool field_bool(const char *name, const struct json *value, const char *field, bool *truth, struct failure *failure);

#endif
