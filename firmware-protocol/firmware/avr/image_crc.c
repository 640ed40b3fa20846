/* Runs on the computer that builds: prints the CRC-16 that belongs into a program image (see avr/program_crc.h). */
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include "core/crc16.h"

enum { FLASH_BYTES = 32768, MARK_BYTES = 8 };

int main(int arguments, char **argument)
{
    static uint8_t image[FLASH_BYTES];
    static const char mark[] = "progCRC:";
    FILE *file = arguments == 2 ? fopen(argument[1], "rb") : NULL;
    if (file == NULL) {
        fprintf(stderr, "image_crc: expected one readable program image (binary)\n");
        return 1;
    }
    size_t length = fread(image, 1, sizeof image, file);
    fclose(file);
    size_t found = 0;
    size_t hole = 0;
    for (size_t at = 0; at + MARK_BYTES + 2 <= length; at++)
        if (memcmp(image + at, mark, MARK_BYTES) == 0) {
            found++;
            hole = at + MARK_BYTES;
        }
    if (found != 1) {
        fprintf(stderr, "image_crc: %s: the mark %s stands in it %zu times, expected once\n", argument[1], mark, found);
        return 1;
    }
    uint16_t crc = CRC16_START;
    for (size_t at = 0; at < length; at++)
        if (at != hole && at != hole + 1)
            crc = crc16_add(crc, image[at]);
    printf("0x%04X\n", crc);
    return 0;
}
