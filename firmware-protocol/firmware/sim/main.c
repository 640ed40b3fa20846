/* probe-sim: runs the probe's firmware in a simulated chip and gives its serial line a pseudo-terminal. */
#include <errno.h>
#include <inttypes.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>

#include "boxes.h"
#include "eeprom_image.h"
#include "simulation.h"

/* Exit codes after the open convention of sysexits. */
enum { EXIT_USAGE = 64, EXIT_BAD_INPUT = 65, EXIT_NO_INPUT = 66, EXIT_DEFECT = 70, EXIT_NO_OUTPUT = 74 };
enum { LAST_BYTES_MS = 2000 };

static void log_warnings(avr_t *avr, const int level, const char *format, va_list args)
{
    (void)avr;
    if (level <= LOG_WARNING)
        vfprintf(stderr, format, args);
}

static bool prepare_eeprom(struct simulation *simulation, struct failure *failure)
{
    uint8_t *eeprom = simulation->board.chip.eeprom->eeprom;
    bool loaded = false;
    if (simulation->options.eeprom != NULL && !eeprom_load(eeprom, simulation->options.eeprom, &loaded, failure))
        return false;
    if (!loaded && simulation->frontend.calibrated)
        eeprom_calibrate(eeprom, &simulation->frontend);
    return true;
}

/* A front-end file says everything itself; else one of the drawn boxes, by the seed. */
static bool prepare_box(struct simulation *simulation, struct failure *failure)
{
    const struct options *options = &simulation->options;
    if (options->front_end != NULL)
        return frontend_read(&simulation->frontend, options->front_end, failure);
    if (options->ideal) {
        frontend_ideal(&simulation->frontend);
        return true;
    }
    if (!boxes_take(&simulation->frontend, options->seed, failure))
        return false;
    if (options->new_box)
        simulation->frontend.calibrated = false;
    fprintf(stderr, "probe-sim: box as soldered, %s, drawn by seed %u\n",
            options->new_box ? "never calibrated" : "calibrated", boxes_of_seed(options->seed));
    return true;
}

static int start(struct simulation *simulation, struct failure *failure)
{
    struct options *options = &simulation->options;
    struct board *board = &simulation->board;
    if (!waveform_read(&simulation->wave, options->waveform, failure))
        return EXIT_BAD_INPUT;
    if (!prepare_box(simulation, failure))
        return EXIT_BAD_INPUT;
    for (size_t i = 0; i < options->crossings; i++) {
        if (simulation->wave.value[options->crossing[i].column] == NULL) {
            fail(failure, "--cross: %s has no column %s", options->waveform,
                 waveform_column_name(options->crossing[i].column));
            return EXIT_BAD_INPUT;
        }
        board->crossing[i] = (struct crossing){options->crossing[i].column, options->crossing[i].level, false, board};
    }
    board->crossings = options->crossings;
    board->wave = &simulation->wave;
    board->frontend = &simulation->frontend;
    board->events = &simulation->events;
    board->bridge = &simulation->bridge;
    noise_init(&board->noise, options->noise_counts, options->seed);
    if (!board_init(board, options->elf, failure))
        return EXIT_NO_INPUT;
    if (options->fuses_given)
        memcpy(board->chip.fuses, options->fuses, sizeof options->fuses);
    if (!prepare_eeprom(simulation, failure))
        return EXIT_BAD_INPUT;
    if (!events_open(&simulation->events, options->events, failure))
        return EXIT_NO_OUTPUT;
    if (options->fed != NULL && (board->fed.file = fopen(options->fed, "wb")) == NULL) {
        fail(failure, "%s: cannot be written: %s", options->fed, strerror(errno));
        return EXIT_NO_OUTPUT;
    }
    return bridge_open(&simulation->bridge, &options->dials, failure) ? EXIT_SUCCESS : EXIT_NO_OUTPUT;
}

static int finish(struct simulation *simulation, bool ran, struct failure *failure)
{
    struct board *board = &simulation->board;
    int code = EXIT_SUCCESS;
    bridge_move(&simulation->bridge, chip_seconds(board->chip.avr->cycle) * 1000);
    if (!simulation_end_asked())
        bridge_drain(&simulation->bridge, LAST_BYTES_MS);
    events_sent(&simulation->events, board->stream.conversions_sent, simulation->bridge.bytes_lost);
    if (simulation->options.measure != NULL && !measure_write(&simulation->measure, simulation->options.measure, failure))
        code = EXIT_NO_OUTPUT;
    if (simulation->options.profile != NULL
        && !measure_write_profile(&simulation->measure, simulation->options.profile, failure))
        code = EXIT_NO_OUTPUT;
    if (simulation->options.eeprom != NULL && !eeprom_save(board->chip.eeprom->eeprom, simulation->options.eeprom, failure))
        code = EXIT_NO_OUTPUT;
    if (!events_close(&simulation->events) || (board->fed.file != NULL && fclose(board->fed.file) != 0)) {
        fail(failure, "events or record file not fully written: %s", strerror(errno));
        code = EXIT_NO_OUTPUT;
    }
    bridge_close(&simulation->bridge);
    if (simulation->slipped_ns > 0)
        fprintf(stderr, "probe-sim: fell behind real time by %" PRIu64 " ms in all\n", simulation->slipped_ns / 1000000);
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
    struct simulation *simulation = calloc(1, sizeof *simulation);
    if (simulation == NULL || !options_read(&simulation->options, count, arguments, &failure)) {
        fprintf(stderr, "probe-sim: %s\n%s", simulation == NULL ? "out of memory" : failure.text, OPTIONS_USAGE);
        free(simulation);
        return EXIT_USAGE;
    }
    avr_global_logger_set(log_warnings);
    struct sigaction action = {.sa_handler = simulation_ask_end};
    sigaction(SIGTERM, &action, NULL);
    sigaction(SIGINT, &action, NULL);
    signal(SIGPIPE, SIG_IGN);
    int code = start(simulation, &failure);
    if (code == EXIT_SUCCESS) {
        printf("pty %s\n", simulation->bridge.path);
        fflush(stdout);
        board_power_on(&simulation->board);
        if (simulation->options.measure != NULL || simulation->options.profile != NULL)
            measure_begin(&simulation->measure, &simulation->board, simulation->board.chip.data_end);
        code = finish(simulation, simulation_run(simulation), &failure);
    }
    if (code != EXIT_SUCCESS)
        fprintf(stderr, "probe-sim: %s\n", failure.text);
    waveform_free(&simulation->wave);
    free(simulation);
    return code;
}
