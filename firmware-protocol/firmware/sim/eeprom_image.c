#include "eeprom_image.h"

#include <errno.h>
#include <string.h>

#include "wire.h"

/* Calibration record: the payload of wire-format.md message 0x0C, then its CRC-16. */
enum { CALIBRATION_ADDRESS = 64, SCALE_OFFSET = 4, SCALE_BYTES = 8, GAIN_U_OFFSET = 68, OFFSET_U_OFFSET = 84,
       CALIBRATION_BYTES = 100 };
enum { CALIBRATED_S = 1767225600 /* 2026-01-01, so that "never" is not shown */ };

static void put_u16(uint8_t *bytes, uint32_t value)
{
    bytes[0] = (uint8_t)value;
    bytes[1] = (uint8_t)(value >> 8);
}

static void put_u32(uint8_t *bytes, uint32_t value)
{
    put_u16(bytes, value);
    put_u16(bytes + 2, value >> 16);
}

void eeprom_calibrate(uint8_t eeprom[EEPROM_BYTES], const struct frontend *frontend)
{
    uint8_t *record = eeprom + CALIBRATION_ADDRESS;
    put_u32(record, CALIBRATED_S);
    for (int c = 0; c < CHANNELS; c++) {
        const struct kept *kept = &frontend->kept[c];
        uint8_t *scale = record + SCALE_OFFSET + c * SCALE_BYTES;
        put_u32(scale, (uint32_t)frontend_base_units((enum channel)c, kept->scale.zero));
        put_u32(scale + 4, (uint32_t)frontend_base_units((enum channel)c, kept->scale.full));
        put_u16(record + GAIN_U_OFFSET + 2 * c, kept->gain_e5);
        put_u16(record + OFFSET_U_OFFSET + 2 * c, kept->zero_hundredths);
    }
    put_u16(record + CALIBRATION_BYTES, wire_crc16(record, CALIBRATION_BYTES));
}

bool eeprom_load(uint8_t eeprom[EEPROM_BYTES], const char *path, bool *loaded, struct failure *failure)
{
    FILE *file = fopen(path, "rb");
    *loaded = file != NULL;
    if (file == NULL)
        return errno == ENOENT || fail(failure, "%s: cannot be read: %s", path, strerror(errno));
    size_t length = fread(eeprom, 1, EEPROM_BYTES, file);
    bool longer = fgetc(file) != EOF;
    fclose(file);
    if (length != EEPROM_BYTES || longer)
        return fail(failure, "%s: is not an EEPROM image; expected exactly %d bytes", path, EEPROM_BYTES);
    return true;
}

bool eeprom_save(const uint8_t eeprom[EEPROM_BYTES], const char *path, struct failure *failure)
{
    FILE *file = fopen(path, "wb");
    if (file == NULL)
        return fail(failure, "%s: cannot be written: %s", path, strerror(errno));
    bool ok = fwrite(eeprom, 1, EEPROM_BYTES, file) == EEPROM_BYTES;
    ok = fclose(file) == 0 && ok;
    return ok || fail(failure, "%s: not fully written: %s", path, strerror(errno));
}
