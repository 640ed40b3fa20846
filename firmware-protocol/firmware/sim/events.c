#include "events.h"

#include <errno.h>
#include <inttypes.h>
#include <string.h>

enum { CYCLES_PER_US = 16 };

bool events_open(struct events *events, const char *path, struct failure *failure)
{
    events->file = path == NULL ? NULL : fopen(path, "w");
    if (path != NULL && events->file == NULL)
        return fail(failure, "%s: cannot be written: %s; expected a place for the events file", path, strerror(errno));
    return true;
}

void events_supply(struct events *events, uint64_t cycle, enum supply_state state)
{
    static const char *const WORDS[] = {"off", "look", "on"};
    if (events->file == NULL)
        return;
    fprintf(events->file, "{\"cycle\":%" PRIu64 ",\"t_us\":%" PRIu64 ",\"supply\":\"%s\"}\n", cycle,
            cycle / CYCLES_PER_US, WORDS[state]);
    fflush(events->file);
}

void events_crossed(struct events *events, uint64_t cycle, enum wave_column column)
{
    if (events->file == NULL)
        return;
    fprintf(events->file, "{\"cycle\":%" PRIu64 ",\"t_us\":%" PRIu64 ",\"crossed\":\"%s\"}\n", cycle,
            cycle / CYCLES_PER_US, waveform_column_name(column));
    fflush(events->file);
}

void events_fault(struct events *events, uint64_t cycle, const char *kind)
{
    if (events->file == NULL)
        return;
    fprintf(events->file, "{\"cycle\":%" PRIu64 ",\"t_us\":%" PRIu64 ",\"fault\":\"%s\"}\n", cycle, cycle / CYCLES_PER_US,
            kind);
    fflush(events->file);
}

void events_sent(struct events *events, uint64_t conversions, uint64_t bytes_lost)
{
    if (events->file == NULL)
        return;
    fprintf(events->file, "{\"conversionsSent\":%" PRIu64 ",\"bytesLost\":%" PRIu64 "}\n", conversions, bytes_lost);
    fflush(events->file);
}

bool events_close(struct events *events)
{
    bool ok = events->file == NULL || fclose(events->file) == 0;
    events->file = NULL;
    return ok;
}
