/* Command line of probe-sim. */
#ifndef SIM_OPTIONS_H
#define SIM_OPTIONS_H

#include "board.h"

enum { MAX_MOMENTS = 4096 };

struct moments {
    size_t count;
    double at_ms[MAX_MOMENTS]; /* in rising order */
};

struct options {
    const char *elf;
    const char *waveform;
    const char *front_end;
    const char *events;
    const char *eeprom;
    const char *measure;
    const char *profile;
    const char *fed;
    double noise_counts;
    uint64_t seed;
    uint8_t fuses[3];
    bool fuses_given;
    bool flat_out;
    bool new_box, ideal; /* which box; neither: as soldered and calibrated */
    bool from_switch_on; /* faults and the end count from the host's first "switch on" */
    double for_ms; /* simulated time after which the program ends by itself; negative = never */
    size_t crossings;
    struct {
        enum wave_column column;
        double level;
    } crossing[MAX_CROSSINGS];
    struct moments reset, brown_out, hang;
    struct bridge_dials dials;
};

extern const char OPTIONS_USAGE[];

bool options_read(struct options *options, int count, char **arguments, struct failure *failure);

#endif
