/* Contents of the simulated EEPROM: a file that outlives the program, or a calibration made from the front-end. */
#ifndef SIM_EEPROM_IMAGE_H
#define SIM_EEPROM_IMAGE_H

#include "frontend.h"

enum { EEPROM_BYTES = 1024 };

/* Reads the file when there is one; loaded says so. */
bool eeprom_load(uint8_t eeprom[EEPROM_BYTES], const char *path, bool *loaded, struct failure *failure);
bool eeprom_save(const uint8_t eeprom[EEPROM_BYTES], const char *path, struct failure *failure);

/* Writes the channel scales as a valid calibration record. */
void eeprom_calibrate(uint8_t eeprom[EEPROM_BYTES], const struct frontend *frontend);

#endif
