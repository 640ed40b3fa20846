#include "script.h"

#include <errno.h>
#include <inttypes.h>
#include <stdlib.h>
#include <string.h>

enum { CYCLES_PER_MS = 16000, CYCLES_PER_US = 16, LINE_BYTES = 4096, LATEST_MS = 3600000 };

static int hex_digit(char c)
{
    if (c >= '0' && c <= '9')
        return c - '0';
    if (c >= 'a' && c <= 'f')
        return c - 'a' + 10;
    return c >= 'A' && c <= 'F' ? c - 'A' + 10 : -1;
}

static bool keep(struct script *script, uint64_t due, uint8_t byte)
{
    if ((script->count & (script->count + 1)) == 0) { /* the room doubles at 0, 1, 3, 7, ... */
        size_t room = 2 * script->count + 1;
        uint8_t *bytes = realloc(script->bytes, room);
        if (bytes == NULL)
            return false;
        script->bytes = bytes;
        uint64_t *cycles = realloc(script->due_cycle, room * sizeof *cycles);
        if (cycles == NULL)
            return false;
        script->due_cycle = cycles;
    }
    script->bytes[script->count] = byte;
    script->due_cycle[script->count++] = due;
    return true;
}

static bool take_line(struct script *script, const char *path, int number, char *line, double *last_ms, struct failure *failure)
{
    line[strcspn(line, "\r\n")] = '\0';
    if (line[0] == '\0' || line[0] == '#')
        return true;
    char *hex;
    double ms = strtod(line, &hex);
    if (hex == line || *hex != ' ' || !(ms >= *last_ms) || ms > LATEST_MS)
        return fail(failure, "%s, line %d: expected rising milliseconds (to %d), a space and bytes in hexadecimal", path, number, LATEST_MS);
    *last_ms = ms;
    for (hex++; hex[0] != '\0'; hex += 2) {
        int high = hex_digit(hex[0]), low = hex[1] == '\0' ? -1 : hex_digit(hex[1]);
        if (high < 0 || low < 0)
            return fail(failure, "%s, line %d: \"%.8s\" are no bytes in hexadecimal; expected two digits a byte", path, number, hex);
        if (!keep(script, (uint64_t)(ms * CYCLES_PER_MS), (uint8_t)(high << 4 | low)))
            return fail(failure, "%s: out of memory", path);
    }
    return true;
}

bool script_read(struct script *script, const char *path, struct failure *failure)
{
    char line[LINE_BYTES];
    double last_ms = 0;
    bool whole = true;
    FILE *file = fopen(path, "r");
    if (file == NULL)
        return fail(failure, "%s: cannot be read: %s; expected the host's script", path, strerror(errno));
    for (int number = 1; whole && fgets(line, sizeof line, file) != NULL; number++) {
        if (strchr(line, '\n') == NULL && !feof(file))
            whole = fail(failure, "%s, line %d: longer than %d characters", path, number, LINE_BYTES - 2);
        else
            whole = take_line(script, path, number, line, &last_ms, failure);
    }
    fclose(file);
    return whole;
}

bool script_record(struct script *script, const char *path, struct failure *failure)
{
    script->record = fopen(path, "w");
    return script->record != NULL || fail(failure, "%s: cannot be written: %s; expected a place for the record of the line", path, strerror(errno));
}

uint64_t script_due(const struct script *script)
{
    return script->next < script->count ? script->due_cycle[script->next] : UINT64_MAX;
}

bool script_next(struct script *script, uint64_t cycle, uint8_t *byte)
{
    if (script_due(script) > cycle)
        return false;
    *byte = script->bytes[script->next++];
    return true;
}

void script_heard(struct script *script, uint64_t cycle, uint8_t byte)
{
    script->heard[script->heard_bytes++] = byte;
    if (byte != 0 && script->heard_bytes < SCRIPT_LONGEST_FRAME)
        return;
    if (script->record != NULL) {
        fprintf(script->record, "{\"cycle\":%" PRIu64 ",\"t_us\":%" PRIu64 ",\"bytes\":\"", cycle, cycle / CYCLES_PER_US);
        for (size_t i = 0; i < script->heard_bytes; i++)
            fprintf(script->record, "%02x", script->heard[i]);
        fprintf(script->record, "\"}\n");
    }
    script->heard_bytes = 0;
}

bool script_close(struct script *script)
{
    free(script->bytes);
    free(script->due_cycle);
    bool written = script->record == NULL || (fflush(script->record) == 0 && !ferror(script->record));
    if (script->record != NULL)
        written = fclose(script->record) == 0 && written;
    return written;
}
