#include "vectors.h"

#include <stdio.h>
#include <string.h>

#include "check.h"

static char *trimmed(char *text)
{
    while (*text == ' ')
        text++;
    size_t length = strlen(text);
    while (length > 0 && (text[length - 1] == ' ' || text[length - 1] == '\n' || text[length - 1] == '\r'))
        text[--length] = 0;
    return text;
}

int vectors_each(const char *folder, const char *name, void (*take)(const struct vector *vector))
{
    char path[512];
    static struct vector vector;
    int count = 0;
    snprintf(path, sizeof path, "%s/%s", folder, name);
    FILE *file = fopen(path, "r");
    CHECK(file != NULL);
    if (file == NULL) {
        fprintf(stderr, "%s: cannot be read\n", path);
        return 0;
    }
    while (fgets(vector.line, sizeof vector.line, file) != NULL) {
        if (vector.line[0] == '#' || vector.line[0] == '\n')
            continue;
        vector.fields = 0;
        char *from = vector.line;
        while (from != NULL && vector.fields < VECTOR_FIELDS) {
            char *bar = strchr(from, '|');
            if (bar != NULL)
                *bar++ = 0;
            vector.field[vector.fields++] = trimmed(from);
            from = bar;
        }
        take(&vector);
        count++;
    }
    fclose(file);
    return count;
}

static int nibble(char digit)
{
    if (digit >= '0' && digit <= '9')
        return digit - '0';
    return digit >= 'A' && digit <= 'F' ? digit - 'A' + 10 : -1;
}

size_t vector_hex(const char *hex, uint8_t bytes[VECTOR_BYTES])
{
    if (strcmp(hex, "-") == 0)
        return SIZE_MAX;
    size_t length = strlen(hex) / 2;
    CHECK(strlen(hex) % 2 == 0 && length <= VECTOR_BYTES);
    for (size_t i = 0; i < length && i < VECTOR_BYTES; i++) {
        CHECK(nibble(hex[2 * i]) >= 0 && nibble(hex[2 * i + 1]) >= 0);
        bytes[i] = (uint8_t)(nibble(hex[2 * i]) * 16 + nibble(hex[2 * i + 1]));
    }
    return length;
}
