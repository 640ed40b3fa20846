#include "waveform.h"

#include <errno.h>
#include <math.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

enum { MAX_LINE = 4096, MAX_FIELDS = 32, TIME_FIELD = WAVE_COLUMNS };

static const char *const COLUMN_NAMES[WAVE_COLUMNS] = {"supply_V", "supply_A", "rail1_V", "rail2_V",
                                                       "rail3_V",  "head_V",   "meter_V"};

const char *waveform_column_name(enum wave_column column)
{
    return COLUMN_NAMES[column];
}

enum wave_column waveform_column(const char *name)
{
    for (int i = 0; i < WAVE_COLUMNS; i++)
        if (strcmp(name, COLUMN_NAMES[i]) == 0)
            return (enum wave_column)i;
    return WAVE_COLUMNS;
}

/* Splits one record in place; a field may be in double quotes. Returns the number of fields, 0 when malformed. */
static size_t split(char *line, char *fields[MAX_FIELDS])
{
    size_t count = 0;
    char *in = line;
    for (;;) {
        if (count == MAX_FIELDS)
            return 0;
        char *out = in;
        fields[count++] = out;
        if (*in == '"') {
            in++;
            for (; *in != '"' || in[1] == '"'; in++) {
                if (*in == '\0')
                    return 0;
                if (*in == '"')
                    in++;
                *out++ = *in;
            }
            in++;
        } else {
            while (*in != '\0' && *in != ',')
                *out++ = *in++;
        }
        char end = *in;
        if (end != '\0' && end != ',')
            return 0;
        *out = '\0';
        if (end == '\0')
            return count;
        in++;
    }
}

static bool read_number(const char *text, double *value)
{
    if (*text == '\0')
        return false;
    char *end;
    errno = 0;
    *value = strtod(text, &end);
    return *end == '\0' && errno == 0 && isfinite(*value);
}

static bool read_header(char *line, const char *path, size_t *count, int kinds[MAX_FIELDS], struct failure *failure)
{
    char *fields[MAX_FIELDS];
    *count = split(line, fields);
    if (*count == 0)
        return fail(failure, "%s:1: malformed header; expected comma-separated names, t_s first", path);
    bool seen[WAVE_COLUMNS] = {false};
    for (size_t i = 0; i < *count; i++) {
        bool is_time = strcmp(fields[i], "t_s") == 0;
        if ((i == 0) != is_time)
            return fail(failure, "%s:1: column %zu is \"%s\"; expected t_s as the first column and only there", path,
                        i + 1, fields[i]);
        kinds[i] = is_time ? TIME_FIELD : (int)waveform_column(fields[i]);
        if (!is_time && kinds[i] == WAVE_COLUMNS)
            return fail(failure,
                        "%s:1: unknown column \"%s\"; expected one of t_s supply_V supply_A rail1_V rail2_V rail3_V "
                        "head_V meter_V",
                        path, fields[i]);
        if (!is_time && seen[kinds[i]])
            return fail(failure, "%s:1: column %s twice; expected each name once", path, fields[i]);
        if (!is_time)
            seen[kinds[i]] = true;
    }
    return true;
}

static bool grow(struct waveform *wave, size_t room)
{
    double **all[WAVE_COLUMNS + 1] = {&wave->t_s};
    for (int c = 0; c < WAVE_COLUMNS; c++)
        all[c + 1] = &wave->value[c];
    for (int c = 0; c <= WAVE_COLUMNS; c++) {
        double *bigger = realloc(*all[c], room * sizeof(double));
        if (bigger == NULL)
            return false;
        *all[c] = bigger;
    }
    return true;
}

static bool read_row(struct waveform *wave, char *line, size_t line_number, const char *path, size_t count,
                     const int kinds[MAX_FIELDS], struct failure *failure)
{
    char *fields[MAX_FIELDS];
    size_t found = split(line, fields);
    if (found != count)
        return fail(failure, "%s:%zu: %zu fields; expected %zu as in the header", path, line_number, found, count);
    for (size_t i = 0; i < count; i++) {
        double value;
        const char *name = kinds[i] == TIME_FIELD ? "t_s" : COLUMN_NAMES[kinds[i]];
        if (!read_number(fields[i], &value))
            return fail(failure, "%s:%zu: %s is \"%s\"; expected a finite number", path, line_number, name, fields[i]);
        if (kinds[i] != TIME_FIELD) {
            wave->value[kinds[i]][wave->rows] = value;
            continue;
        }
        if (wave->rows == 0 ? value != 0 : value <= wave->t_s[wave->rows - 1])
            return fail(failure, "%s:%zu: t_s is %s; expected %s", path, line_number, fields[i],
                        wave->rows == 0 ? "0 in the first row (the switch closes)" : "more than in the row before");
        wave->t_s[wave->rows] = value;
    }
    wave->rows++;
    return true;
}

static bool read_lines(struct waveform *wave, FILE *file, const char *path, struct failure *failure)
{
    char line[MAX_LINE];
    int kinds[MAX_FIELDS];
    size_t count = 0, number = 0, room = 0;
    while (fgets(line, sizeof line, file) != NULL) {
        number++;
        size_t length = strlen(line);
        if (length == sizeof line - 1 && line[length - 1] != '\n')
            return fail(failure, "%s:%zu: line too long; expected at most %d characters", path, number, MAX_LINE - 2);
        line[strcspn(line, "\r\n")] = '\0';
        if (line[0] == '\0' && number > 1)
            continue;
        if (number == 1) {
            if (!read_header(line, path, &count, kinds, failure))
                return false;
            continue;
        }
        if (wave->rows == room) {
            room = room == 0 ? 256 : room * 2;
            if (!grow(wave, room))
                return fail(failure, "%s:%zu: out of memory; expected a shorter file", path, number);
        }
        if (!read_row(wave, line, number, path, count, kinds, failure))
            return false;
    }
    if (wave->rows == 0)
        return fail(failure, "%s:%zu: no rows; expected a header and at least one row of numbers", path, number);
    bool present[WAVE_COLUMNS] = {false};
    for (size_t i = 1; i < count; i++)
        present[kinds[i]] = true;
    for (int c = 0; c < WAVE_COLUMNS; c++) {
        if (!present[c]) {
            free(wave->value[c]);
            wave->value[c] = NULL;
        }
    }
    return true;
}

bool waveform_read(struct waveform *wave, const char *path, struct failure *failure)
{
    memset(wave, 0, sizeof *wave);
    FILE *file = fopen(path, "r");
    if (file == NULL)
        return fail(failure, "%s: cannot be opened: %s; expected a waveform file (CSV)", path, strerror(errno));
    bool ok = read_lines(wave, file, path, failure);
    fclose(file);
    if (!ok)
        waveform_free(wave);
    return ok;
}

void waveform_free(struct waveform *wave)
{
    free(wave->t_s);
    for (int c = 0; c < WAVE_COLUMNS; c++)
        free(wave->value[c]);
    memset(wave, 0, sizeof *wave);
}

/* Index of the last row that is not after t_s. */
static size_t row_before(const struct waveform *wave, double t_s)
{
    size_t low = 0, high = wave->rows;
    while (high - low > 1) {
        size_t middle = low + (high - low) / 2;
        if (wave->t_s[middle] <= t_s)
            low = middle;
        else
            high = middle;
    }
    return low;
}

double waveform_at(const struct waveform *wave, enum wave_column column, double t_s)
{
    const double *value = wave->value[column];
    size_t row = row_before(wave, t_s);
    if (row + 1 == wave->rows || t_s <= wave->t_s[row])
        return value[row];
    double share = (t_s - wave->t_s[row]) / (wave->t_s[row + 1] - wave->t_s[row]);
    return value[row] + (value[row + 1] - value[row]) * share;
}

double waveform_next_crossing(const struct waveform *wave, enum wave_column column, double level, int sign, bool above,
                              double after_s)
{
    const double *value = wave->value[column];
    for (size_t row = row_before(wave, after_s); row + 1 < wave->rows; row++) {
        double from = sign * (value[row] - level), to = sign * (value[row + 1] - level);
        if ((to > 0) == above)
            continue;
        /* "Over" means beyond the level: a rise that starts on the level is over from there on. */
        double share = from == to || (from > 0) != above ? 0 : from / (from - to);
        double t_s = wave->t_s[row] + (wave->t_s[row + 1] - wave->t_s[row]) * share;
        return t_s > after_s ? t_s : after_s;
    }
    return -1;
}
