/* probe-sim: runs the probe's firmware in a simulated chip and gives its serial line a pseudo-terminal. */
#include <errno.h>
#include <inttypes.h>
#include <math.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "boxes.h"
#include "eeprom_image.h"
#include "measure.h"
#include "options.h"

/* Exit codes after the open convention of sysexits. */
enum { EXIT_USAGE = 64, EXIT_BAD_INPUT = 65, EXIT_NO_INPUT = 66, EXIT_DEFECT = 70, EXIT_NO_OUTPUT = 74 };

enum { SLICE_CYCLES = CHIP_HZ / 2000, LATEST_NS = 2000000000, SLICE_NS = 500000, NS_PER_S = 1000000000, FLAT_OUT_BACKLOG = QUEUE_BYTES / 4,
       CLIENT_PATIENCE_MS = 200, LAST_BYTES_MS = 2000 };

struct program {
    struct options options;
    struct waveform wave;
    struct frontend frontend;
    struct events events;
    struct bridge bridge;
    struct board board;
    struct measure measure;
    size_t next_reset, next_brown_out, next_hang;
    uint64_t origin; /* cycle that the times of faults and the end count from; UINT64_MAX while it is not known */
    bool client_gone; /* nobody took anything for a while: waiting again would stop the simulation */
    uint64_t slipped_ns; /* by how much the simulation fell behind real time for good */
};

static volatile sig_atomic_t end_asked;

static void ask_end(int signal_number)
{
    (void)signal_number;
    end_asked = 1;
}

static void log_warnings(avr_t *avr, const int level, const char *format, va_list args)
{
    (void)avr;
    if (level <= LOG_WARNING)
        vfprintf(stderr, format, args);
}

static uint64_t now_ns(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (uint64_t)now.tv_sec * NS_PER_S + (uint64_t)now.tv_nsec;
}

static void sleep_until_ns(uint64_t deadline_ns)
{
    struct timespec deadline = {(time_t)(deadline_ns / NS_PER_S), (long)(deadline_ns % NS_PER_S)};
    clock_nanosleep(CLOCK_MONOTONIC, TIMER_ABSTIME, &deadline, NULL);
}

static uint64_t cycle_of_ms(double ms)
{
    return (uint64_t)(ms * (CHIP_HZ / 1000));
}

static uint64_t after_origin(const struct program *program, double ms)
{
    return program->origin == UINT64_MAX ? UINT64_MAX : program->origin + cycle_of_ms(ms);
}

static uint64_t next_moment(const struct program *program, const struct moments *moments, size_t next)
{
    return next < moments->count ? after_origin(program, moments->at_ms[next]) : UINT64_MAX;
}

static uint64_t earlier(uint64_t a, uint64_t b)
{
    return a < b ? a : b;
}

static avr_cycle_count_t wake(avr_t *avr, avr_cycle_count_t when, void *param)
{
    (void)avr;
    (void)when;
    (void)param;
    return 0;
}

/* A hang can begin only where the main program runs; inside a handler it waits for the next step. */
static bool in_main_program(const avr_t *avr)
{
    return avr->interrupts.running_ptr == 0 && avr->sreg[S_I] != 0;
}

static void inject(struct program *program)
{
    struct options *options = &program->options;
    struct board *board = &program->board;
    uint64_t cycle = board->chip.avr->cycle;
    if (next_moment(program, &options->reset, program->next_reset) <= cycle) {
        program->next_reset++;
        events_fault(&program->events, cycle, "reset");
        chip_reset(&board->chip, RESET_EXTERNAL);
    }
    if (next_moment(program, &options->brown_out, program->next_brown_out) <= cycle) {
        program->next_brown_out++;
        events_fault(&program->events, cycle, "brownout");
        chip_reset(&board->chip, RESET_BROWN_OUT);
    }
    if (next_moment(program, &options->hang, program->next_hang) <= cycle && in_main_program(board->chip.avr)) {
        program->next_hang++;
        events_fault(&program->events, cycle, "hang");
        chip_hang(&board->chip);
    }
}

static bool step(struct program *program)
{
    struct measure *measure = &program->measure;
    if (!measure->on)
        return board_step(&program->board);
    measure_before_step(measure);
    bool running = board_step(&program->board);
    measure_after_step(measure);
    return running;
}

/* Runs to the given cycle, stopping exactly where something is to be changed. */
static bool run_to(struct program *program, uint64_t target)
{
    avr_t *avr = program->board.chip.avr;
    const struct options *options = &program->options;
    while (avr->cycle < target) {
        uint64_t stop = earlier(target, board_next_change(&program->board));
        stop = earlier(stop, next_moment(program, &options->reset, program->next_reset));
        stop = earlier(stop, next_moment(program, &options->brown_out, program->next_brown_out));
        stop = earlier(stop, next_moment(program, &options->hang, program->next_hang));
        avr_cycle_timer_cancel(avr, wake, program);
        if (stop > avr->cycle)
            avr_cycle_timer_register(avr, stop - avr->cycle, wake, program);
        do {
            if (!step(program))
                return false;
        } while (avr->cycle < stop);
        inject(program);
    }
    return true;
}

static void let_client_catch_up(struct program *program, double now_ms)
{
    size_t before = program->bridge.to_host.count;
    if (before < FLAT_OUT_BACKLOG) {
        program->client_gone = false;
        return;
    }
    if (program->client_gone)
        return;
    bridge_wait_for_client(&program->bridge, CLIENT_PATIENCE_MS);
    bridge_move(&program->bridge, now_ms);
    program->client_gone = program->bridge.to_host.count == before;
}

static bool run(struct program *program)
{
    avr_t *avr = program->board.chip.avr;
    double ns_per_cycle = 62.5 / (1 + program->frontend.clock_share);
    uint64_t base_ns = now_ns(), base_cycle = avr->cycle, slice_ns = base_ns;
    program->origin = program->options.from_switch_on ? UINT64_MAX : 0;
    for (;;) {
        if (program->board.stream.switch_on_sent && program->origin == UINT64_MAX)
            program->origin = avr->cycle;
        uint64_t end = program->options.for_ms < 0 ? UINT64_MAX : after_origin(program, program->options.for_ms);
        if (end_asked || avr->cycle >= end)
            return true;
        if (!run_to(program, earlier(end, avr->cycle + SLICE_CYCLES)))
            return false;
        double now_ms = chip_seconds(avr->cycle) * 1000;
        bridge_move(&program->bridge, now_ms);
        board_pump_receiver(&program->board);
        if (program->options.flat_out) {
            let_client_catch_up(program, now_ms);
            continue;
        }
        uint64_t due_ns = base_ns + (uint64_t)((double)(avr->cycle - base_cycle) * ns_per_cycle);
        uint64_t clock_ns = now_ns();
        if (clock_ns > due_ns + LATEST_NS) { /* stopped, or a machine too busy: time was lost, not saved up */
            program->slipped_ns += clock_ns - due_ns;
            base_ns += clock_ns - due_ns;
        }
        /* What is behind catches up at twice the pace, so that a host's heartbeats do not seem to stay away. */
        uint64_t soonest_ns = slice_ns + SLICE_NS / 2;
        sleep_until_ns(due_ns > soonest_ns ? due_ns : soonest_ns);
        slice_ns = now_ns();
    }
}

static bool prepare_eeprom(struct program *program, struct failure *failure)
{
    uint8_t *eeprom = program->board.chip.eeprom->eeprom;
    bool loaded = false;
    if (program->options.eeprom != NULL && !eeprom_load(eeprom, program->options.eeprom, &loaded, failure))
        return false;
    if (!loaded && program->frontend.calibrated)
        eeprom_calibrate(eeprom, &program->frontend);
    return true;
}

/* A front-end file says everything itself; else one of the drawn boxes, by the seed. */
static bool prepare_box(struct program *program, struct failure *failure)
{
    const struct options *options = &program->options;
    if (options->front_end != NULL)
        return frontend_read(&program->frontend, options->front_end, failure);
    if (options->ideal) {
        frontend_ideal(&program->frontend);
        return true;
    }
    if (!boxes_take(&program->frontend, options->seed, failure))
        return false;
    if (options->new_box)
        program->frontend.calibrated = false;
    fprintf(stderr, "probe-sim: box as soldered, %s, drawn by seed %u\n",
            options->new_box ? "never calibrated" : "calibrated", boxes_of_seed(options->seed));
    return true;
}

static int start(struct program *program, struct failure *failure)
{
    struct options *options = &program->options;
    struct board *board = &program->board;
    if (!waveform_read(&program->wave, options->waveform, failure))
        return EXIT_BAD_INPUT;
    if (!prepare_box(program, failure))
        return EXIT_BAD_INPUT;
    for (size_t i = 0; i < options->crossings; i++) {
        if (program->wave.value[options->crossing[i].column] == NULL) {
            fail(failure, "--cross: %s has no column %s", options->waveform,
                 waveform_column_name(options->crossing[i].column));
            return EXIT_BAD_INPUT;
        }
        board->crossing[i] = (struct crossing){options->crossing[i].column, options->crossing[i].level, false, board};
    }
    board->crossings = options->crossings;
    board->wave = &program->wave;
    board->frontend = &program->frontend;
    board->events = &program->events;
    board->bridge = &program->bridge;
    noise_init(&board->noise, options->noise_counts, options->seed);
    if (!board_init(board, options->elf, failure))
        return EXIT_NO_INPUT;
    if (options->fuses_given)
        memcpy(board->chip.fuses, options->fuses, sizeof options->fuses);
    if (!prepare_eeprom(program, failure))
        return EXIT_BAD_INPUT;
    if (!events_open(&program->events, options->events, failure))
        return EXIT_NO_OUTPUT;
    if (options->fed != NULL && (board->fed.file = fopen(options->fed, "wb")) == NULL) {
        fail(failure, "%s: cannot be written: %s", options->fed, strerror(errno));
        return EXIT_NO_OUTPUT;
    }
    return bridge_open(&program->bridge, &options->dials, failure) ? EXIT_SUCCESS : EXIT_NO_OUTPUT;
}

static int finish(struct program *program, bool ran, struct failure *failure)
{
    struct board *board = &program->board;
    int code = EXIT_SUCCESS;
    bridge_move(&program->bridge, chip_seconds(board->chip.avr->cycle) * 1000);
    if (!end_asked)
        bridge_drain(&program->bridge, LAST_BYTES_MS);
    events_sent(&program->events, board->stream.conversions_sent, program->bridge.bytes_lost);
    if (program->options.measure != NULL && !measure_write(&program->measure, program->options.measure, failure))
        code = EXIT_NO_OUTPUT;
    if (program->options.profile != NULL
        && !measure_write_profile(&program->measure, program->options.profile, failure))
        code = EXIT_NO_OUTPUT;
    if (program->options.eeprom != NULL && !eeprom_save(board->chip.eeprom->eeprom, program->options.eeprom, failure))
        code = EXIT_NO_OUTPUT;
    if (!events_close(&program->events) || (board->fed.file != NULL && fclose(board->fed.file) != 0)) {
        fail(failure, "events or record file not fully written: %s", strerror(errno));
        code = EXIT_NO_OUTPUT;
    }
    bridge_close(&program->bridge);
    if (program->slipped_ns > 0)
        fprintf(stderr, "probe-sim: fell behind real time by %" PRIu64 " ms in all\n", program->slipped_ns / 1000000);
    if (!ran) {
        fail(failure, "the firmware stopped (slept with interrupts off, or crashed) at cycle %" PRIu64 ", address 0x%x",
             (uint64_t)board->chip.avr->cycle, board->chip.avr->pc);
        code = EXIT_DEFECT;
    }
    return code;
}

int main(int count, char **arguments)
{
    struct failure failure = {.text = ""};
    struct program *program = calloc(1, sizeof *program);
    if (program == NULL || !options_read(&program->options, count, arguments, &failure)) {
        fprintf(stderr, "probe-sim: %s\n%s", program == NULL ? "out of memory" : failure.text, OPTIONS_USAGE);
        free(program);
        return EXIT_USAGE;
    }
    avr_global_logger_set(log_warnings);
    struct sigaction action = {.sa_handler = ask_end};
    sigaction(SIGTERM, &action, NULL);
    sigaction(SIGINT, &action, NULL);
    signal(SIGPIPE, SIG_IGN);
    int code = start(program, &failure);
    if (code == EXIT_SUCCESS) {
        printf("pty %s\n", program->bridge.path);
        fflush(stdout);
        board_power_on(&program->board);
        if (program->options.measure != NULL || program->options.profile != NULL)
            measure_begin(&program->measure, &program->board, program->board.chip.data_end);
        code = finish(program, run(program), &failure);
    }
    if (code != EXIT_SUCCESS)
        fprintf(stderr, "probe-sim: %s\n", failure.text);
    waveform_free(&program->wave);
    free(program);
    return code;
}
