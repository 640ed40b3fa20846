/* Exact cycle statistics: interrupts, interrupts-off stretches, share of time awake, stack. */
#ifndef SIM_MEASURE_H
#define SIM_MEASURE_H

#include "board.h"

enum { WINDOW_CYCLES = CHIP_HZ / 5, FLASH_WORDS = 16384 };

struct vector_statistics {
    uint64_t count;
    uint64_t total_cycles; /* nested interrupts included */
    uint64_t longest_cycles;
};

struct measure {
    struct board *board;
    bool on;
    struct vector_statistics vector[CHIP_VECTORS];
    uint64_t from_cycle;

    uint64_t resets_seen;
    bool first_enable_seen; /* stretches before the first "interrupts on" after a reset are start-up */
    bool interrupts_off;
    uint64_t off_since_cycle;
    uint32_t off_since_pc;
    bool off_by_entry;
    uint64_t longest_off_cycles;
    uint32_t longest_off_pc;

    uint64_t window_from_cycle;
    uint64_t window_asleep_from_cycles;
    double busiest_window;

    uint32_t step_address;
    uint64_t step_cycle;
    uint64_t step_asleep_cycles;
    uint64_t cycles_at[FLASH_WORDS]; /* cycles awake by the address of the instruction */

    uint16_t lowest_stack;
    uint16_t data_end; /* first address above the program's variables */
};

/* Starts counting; from here on the chip has to be run one instruction at a time. */
void measure_begin(struct measure *measure, struct board *board, uint16_t data_end);

/* Around every step of the chip. */
void measure_before_step(struct measure *measure);
void measure_after_step(struct measure *measure);

bool measure_write(const struct measure *measure, const char *path, struct failure *failure);

/* Lines "address cycles" of the instructions that ran, to be added up by function with the symbols of the ELF. */
bool measure_write_profile(const struct measure *measure, const char *path, struct failure *failure);

#endif
