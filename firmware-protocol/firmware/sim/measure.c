#include "measure.h"

#include <errno.h>
#include <inttypes.h>
#include <sim_core.h>
#include <string.h>

static const char *const VECTOR_NAMES[CHIP_VECTORS] = {
    "reset",          "int0",           "int1",           "pcint0",         "pcint1",  "pcint2",       "watchdog",
    "timer2-compare-a", "timer2-compare-b", "timer2-overflow", "timer1-capture", "timer1-compare-a", "timer1-compare-b",
    "timer1-overflow", "timer0-compare-a", "timer0-compare-b", "timer0-overflow", "spi",  "usart-receive", "usart-empty",
    "usart-transmit",  "converter",      "eeprom",         "comparator",     "twi",     "program-memory"};

enum { ENTRY_CYCLES = 4, RETURN_CYCLES = 4, RAM_START = 0x100 };

static void vector_running(avr_irq_t *irq, uint32_t value, void *param)
{
    struct measure *measure = param;
    if (value != 0)
        return;
    /* Raised at the beginning of the return instruction. */
    uint64_t cycles = measure->board->chip.avr->cycle - measure->board->chip.entered_cycle[irq->irq] + RETURN_CYCLES;
    struct vector_statistics *vector = &measure->vector[irq->irq];
    vector->count++;
    vector->total_cycles += cycles;
    if (cycles > vector->longest_cycles)
        vector->longest_cycles = cycles;
}

void measure_begin(struct measure *measure, struct board *board, uint16_t data_end)
{
    memset(measure, 0, sizeof *measure);
    measure->on = true;
    measure->board = board;
    measure->data_end = data_end;
    measure->lowest_stack = board->chip.avr->ramend;
    measure->from_cycle = measure->window_from_cycle = board->chip.avr->cycle;
    board->chip.avr->run_cycle_limit = 1;
    for (int v = 1; v < CHIP_VECTORS; v++) {
        avr_irq_t *irq = avr_get_interrupt_irq(board->chip.avr, (uint8_t)v);
        if (irq != NULL)
            avr_irq_register_notify(&irq[AVR_INT_IRQ_RUNNING], vector_running, measure);
    }
}

void measure_before_step(struct measure *measure)
{
    const avr_t *avr = measure->board->chip.avr;
    measure->interrupts_off = avr->sreg[S_I] == 0;
    measure->step_address = avr->pc;
    measure->step_cycle = avr->cycle;
    measure->step_asleep_cycles = measure->board->chip.asleep_cycles;
}

static void watch_interrupts_off(struct measure *measure, bool was_off)
{
    avr_t *avr = measure->board->chip.avr;
    bool off = avr->sreg[S_I] == 0;
    if (!off)
        measure->first_enable_seen = true;
    if (!measure->first_enable_seen || off == was_off)
        return;
    if (off) {
        measure->off_since_cycle = avr->cycle;
        measure->off_since_pc = avr->pc;
        measure->off_by_entry = avr->pc != 0 && avr->pc < CHIP_VECTORS * avr->vector_size;
        return;
    }
    uint64_t cycles = avr->cycle - measure->off_since_cycle + (measure->off_by_entry ? ENTRY_CYCLES : 0);
    if (measure->off_since_cycle != 0 && cycles > measure->longest_off_cycles) {
        measure->longest_off_cycles = cycles;
        measure->longest_off_pc = measure->off_since_pc;
    }
}

static void close_window(struct measure *measure)
{
    uint64_t length = measure->board->chip.avr->cycle - measure->window_from_cycle;
    double busy = 1 - (double)(measure->board->chip.asleep_cycles - measure->window_asleep_from_cycles) / (double)length;
    if (measure->board->fed.locked && busy > measure->busiest_window)
        measure->busiest_window = busy;
    measure->window_from_cycle = measure->board->chip.avr->cycle;
    measure->window_asleep_from_cycles = measure->board->chip.asleep_cycles;
}

void measure_after_step(struct measure *measure)
{
    avr_t *avr = measure->board->chip.avr;
    measure->cycles_at[measure->step_address / 2 % FLASH_WORDS] +=
        avr->cycle - measure->step_cycle - (measure->board->chip.asleep_cycles - measure->step_asleep_cycles);
    if (measure->resets_seen != measure->board->chip.resets) {
        measure->resets_seen = measure->board->chip.resets;
        measure->first_enable_seen = false;
        measure->off_since_cycle = 0;
    }
    uint16_t stack = (uint16_t)(avr->data[R_SPL] | avr->data[R_SPH] << 8);
    if (measure->first_enable_seen && stack > RAM_START && stack < measure->lowest_stack)
        measure->lowest_stack = stack;
    watch_interrupts_off(measure, measure->interrupts_off);
    if (avr->cycle - measure->window_from_cycle >= WINDOW_CYCLES)
        close_window(measure);
}

static double busy_share(const struct measure *measure)
{
    double total = (double)(measure->board->chip.avr->cycle - measure->from_cycle);
    return total > 0 ? 1 - (double)measure->board->chip.asleep_cycles / total : 0;
}

static void write_vectors(const struct measure *measure, FILE *file)
{
    const char *comma = "";
    fprintf(file, "  \"interrupts\": {");
    for (int v = 1; v < CHIP_VECTORS; v++) {
        const struct vector_statistics *vector = &measure->vector[v];
        if (vector->count == 0)
            continue;
        fprintf(file, "%s\n    \"%s\": {\"count\": %" PRIu64 ", \"meanCycles\": %.1f, \"longestCycles\": %" PRIu64 "}",
                comma, VECTOR_NAMES[v], vector->count, (double)vector->total_cycles / (double)vector->count,
                vector->longest_cycles);
        comma = ",";
    }
    fprintf(file, "\n  },\n");
}

bool measure_write(const struct measure *measure, const char *path, struct failure *failure)
{
    const struct board *board = measure->board;
    const struct fed *fed = &board->fed;
    FILE *file = fopen(path, "w");
    if (file == NULL)
        return fail(failure, "%s: cannot be written: %s", path, strerror(errno));
    fprintf(file, "{\n  \"cycles\": %" PRIu64 ",\n", board->chip.avr->cycle);
    write_vectors(measure, file);
    fprintf(file, "  \"interruptsOff\": {\"longestCycles\": %" PRIu64 ", \"fromAddress\": %u},\n",
            measure->longest_off_cycles, measure->longest_off_pc);
    fprintf(file, "  \"busyShare\": %.4f,\n  \"busiestWindowShare\": %.4f,\n", busy_share(measure),
            measure->busiest_window);
    fprintf(file,
            "  \"conversions\": {\"started\": %" PRIu64 ", \"missedStarts\": %" PRIu64 ", \"offPlan\": %" PRIu64
            ", \"longestJitterCycles\": %" PRIu64 ", \"compared\": %" PRIu64 ", \"wrong\": %" PRIu64
            ", \"mislabelled\": %" PRIu64 ", \"notFound\": %" PRIu64 ", \"readingsCompared\": %" PRIu64
            ", \"readingsWrong\": %" PRIu64 "},\n",
            fed->started, fed->missed_starts, fed->off_plan, fed->longest_jitter_cycles, fed->compared, fed->wrong,
            fed->mislabelled, fed->not_found, fed->readings_compared, fed->readings_wrong);
    fprintf(file, "  \"reaction\": {\"longestCycles\": %" PRIu64 "},\n", board->longest_reaction_cycles);
    fprintf(file, "  \"line\": {\"bytesLost\": %" PRIu64 ", \"receiveOverruns\": %" PRIu64 "},\n",
            board->bridge->bytes_lost, board->chip.receive_overruns);
    fprintf(file, "  \"resets\": %" PRIu64 ",\n", board->chip.resets);
    fprintf(file, "  \"stack\": {\"deepestBytes\": %u, \"gapBytes\": %d}\n}\n", board->chip.avr->ramend - measure->lowest_stack,
            measure->lowest_stack - measure->data_end);
    return fclose(file) == 0 || fail(failure, "%s: not fully written: %s", path, strerror(errno));
}

bool measure_write_profile(const struct measure *measure, const char *path, struct failure *failure)
{
    FILE *file = fopen(path, "w");
    if (file == NULL)
        return fail(failure, "%s: cannot be written: %s", path, strerror(errno));
    for (size_t word = 0; word < FLASH_WORDS; word++)
        if (measure->cycles_at[word] != 0)
            fprintf(file, "%zx %" PRIu64 "\n", word * 2, measure->cycles_at[word]);
    return fclose(file) == 0 || fail(failure, "%s: not fully written: %s", path, strerror(errno));
}
