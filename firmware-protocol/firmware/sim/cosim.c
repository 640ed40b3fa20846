/* probe-cosim: the probe's program in the simulated chip, in a circuit that is simulated with it. */
#include <errno.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "circuit.h"
#include "eeprom_image.h"

/* Exit codes after the open convention of sysexits. */
enum { EXIT_USAGE = 64, EXIT_BAD_INPUT = 65, EXIT_DEFECT = 70, EXIT_NO_OUTPUT = 74 };

static const char USAGE[] =
    "usage: probe-cosim --elf ELF --circuit NETLIST --pins FILE --for-ms N [--host SCRIPT] [--line FILE]\n"
    "  --circuit NETLIST    box, supply and set; without analysis and end\n"
    "  --pins FILE          lines \"PD2 SWP\": which node each pin of the chip is joined to\n"
    "  --host SCRIPT        lines \"MILLISECONDS HEX\": what the host sends, in the probe's time\n"
    "  --line FILE          what the probe sends: a JSON object for each whole frame\n"
    "  --events FILE        each change of an output pin (JSON lines)\n"
    "  --watch NODE         highest, lowest, last value and integral of a node; repeatable, at most 48\n"
    "  --trace FILE         every point of the watched nodes (CSV)\n"
    "  --fine-at-ms N       fine steps from here for 2 ms; repeatable (something in the circuit changes there)\n"
    "  --front-end FILE     its channels are the calibration in the EEPROM; without it and --eeprom the box is new\n"
    "  --eeprom FILE        EEPROM contents, read if there, saved at the end\n"
    "  --stop-clock-at-ms N the oscillator stops: pins stay as they are until the watchdog resets\n"
    "  --hang-at-ms N       the main program hangs, interrupts go on\n"
    "  --loud               print what the circuit simulator says\n"
    "Prints one JSON object at the end.\n";

struct program {
    struct circuit circuit;
    const char *elf, *pins, *host, *line, *events, *trace, *front_end, *eeprom;
};

static bool milliseconds(const char *option, const char *text, double *seconds, struct failure *failure)
{
    char *end;
    double ms = strtod(text, &end);
    if (end == text || *end != '\0' || !(ms >= 0 && ms <= 3600000))
        return fail(failure, "%s %s: expected milliseconds from 0 to 3600000", option, text);
    *seconds = ms / 1000;
    return true;
}

static bool watch(struct circuit *circuit, const char *node, struct failure *failure)
{
    if (circuit->watched_count == CIRCUIT_MAX_WATCHED || strlen(node) >= WIRING_NAME_BYTES)
        return fail(failure, "--watch %s: expected at most %d nodes of at most %d letters", node, CIRCUIT_MAX_WATCHED, WIRING_NAME_BYTES - 1);
    strcpy(circuit->watched[circuit->watched_count++].name, node);
    return true;
}

static bool take(struct program *program, const char *option, const char *value, struct failure *failure)
{
    struct circuit *circuit = &program->circuit;
    const struct {
        const char *name;
        const char **text;
    } texts[] = {{"--elf", &program->elf}, {"--circuit", &circuit->netlist}, {"--pins", &program->pins}, {"--host", &program->host},
                 {"--line", &program->line}, {"--events", &program->events}, {"--trace", &program->trace}, {"--front-end", &program->front_end}, {"--eeprom", &program->eeprom}};
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        if (strcmp(option, texts[i].name) == 0) {
            *texts[i].text = value;
            return true;
        }
    }
    if (strcmp(option, "--for-ms") == 0)
        return milliseconds(option, value, &circuit->for_s, failure);
    if (strcmp(option, "--stop-clock-at-ms") == 0)
        return milliseconds(option, value, &circuit->clock_stops_s, failure);
    if (strcmp(option, "--hang-at-ms") == 0)
        return milliseconds(option, value, &circuit->hangs_s, failure);
    if (strcmp(option, "--watch") == 0)
        return watch(circuit, value, failure);
    if (strcmp(option, "--fine-at-ms") == 0) {
        if (circuit->fine_moments == CIRCUIT_MAX_FINE)
            return fail(failure, "--fine-at-ms: expected at most %d", CIRCUIT_MAX_FINE);
        return milliseconds(option, value, &circuit->fine_at_s[circuit->fine_moments++], failure);
    }
    return fail(failure, "%s: no such option", option);
}

static bool read_options(struct program *program, int count, char **arguments, struct failure *failure)
{
    struct circuit *circuit = &program->circuit;
    circuit->clock_stops_s = circuit->hangs_s = -1;
    circuit->spice.quiet = true;
    for (int i = 1; i < count; i++) {
        if (strcmp(arguments[i], "--loud") == 0) {
            circuit->spice.quiet = false;
            continue;
        }
        if (i + 1 == count)
            return fail(failure, "%s: a value is missing", arguments[i]);
        if (!take(program, arguments[i], arguments[i + 1], failure))
            return false;
        i++;
    }
    if (program->elf == NULL || circuit->netlist == NULL || program->pins == NULL || circuit->for_s <= 0)
        return fail(failure, "--elf, --circuit, --pins and --for-ms are needed");
    return true;
}

static bool open_for(FILE **file, const char *path, struct failure *failure)
{
    if (path == NULL)
        return true;
    *file = fopen(path, "w");
    return *file != NULL || fail(failure, "%s: cannot be written: %s", path, strerror(errno));
}

static int start(struct program *program, struct failure *failure)
{
    struct circuit *circuit = &program->circuit;
    FILE *there = fopen(circuit->netlist, "r");
    if (there == NULL) {
        fail(failure, "%s: cannot be read: %s; expected a netlist", circuit->netlist, strerror(errno));
        return EXIT_BAD_INPUT;
    }
    fclose(there);
    if (!wiring_read(&circuit->wiring, program->pins, failure)
        || (program->host != NULL && !script_read(&circuit->script, program->host, failure)))
        return EXIT_BAD_INPUT;
    if ((program->line != NULL && !script_record(&circuit->script, program->line, failure))
        || !open_for(&circuit->events, program->events, failure) || !open_for(&circuit->trace, program->trace, failure))
        return EXIT_NO_OUTPUT;
    if (circuit->trace != NULL) {
        fprintf(circuit->trace, "t_s");
        for (size_t i = 0; i < circuit->watched_count; i++)
            fprintf(circuit->trace, ",%s", circuit->watched[i].name);
        fputc('\n', circuit->trace);
    }
    return EXIT_SUCCESS;
}

/* Contents of the EEPROM: the file if there is one, else the calibration asked for, else blank. */
static int run(struct program *program, struct failure *failure)
{
    struct circuit *circuit = &program->circuit;
    struct frontend calibrated;
    bool loaded = false;
    frontend_defaults(&calibrated);
    if (!circuit_prepare(circuit, program->elf, failure)
        || (program->front_end != NULL && !frontend_read(&calibrated, program->front_end, failure))
        || (program->eeprom != NULL && !eeprom_load(circuit->chip.eeprom->eeprom, program->eeprom, &loaded, failure)))
        return EXIT_BAD_INPUT;
    if (!loaded && calibrated.channels_given)
        eeprom_calibrate(circuit->chip.eeprom->eeprom, &calibrated);
    return circuit_run(circuit, failure) ? EXIT_SUCCESS : EXIT_DEFECT;
}

static void print_result(const struct circuit *circuit)
{
    printf("{\"seconds\":%.9g,\"resets\":%llu,\"watched\":{", circuit->now_s, (unsigned long long)circuit->chip.resets);
    for (size_t i = 0; i < circuit->watched_count; i++) {
        const struct watched *of = &circuit->watched[i];
        printf("%s\"%s\":{\"highest\":%.9g,\"highestAtS\":%.9g,\"lowest\":%.9g,\"lowestAtS\":%.9g,\"integral\":%.9g,\"last\":%.9g}", i == 0 ? "" : ",",
               of->name, of->highest, of->highest_at_s, of->lowest, of->lowest_at_s, of->integral, of->last);
    }
    printf("}}\n");
}

static bool close_file(FILE *file)
{
    return file == NULL || fclose(file) == 0;
}

static void quiet_chip(avr_t *avr, const int level, const char *format, va_list args)
{
    (void)avr;
    if (level <= LOG_ERROR)
        vfprintf(stderr, format, args);
}

int main(int count, char **arguments)
{
    struct failure failure = {.text = ""};
    struct program *program = calloc(1, sizeof *program);
    if (program == NULL || !read_options(program, count, arguments, &failure)) {
        fprintf(stderr, "probe-cosim: %s\n%s", program == NULL ? "out of memory" : failure.text, USAGE);
        free(program);
        return EXIT_USAGE;
    }
    avr_global_logger_set(quiet_chip);
    struct circuit *circuit = &program->circuit;
    int code = start(program, &failure);
    if (code == EXIT_SUCCESS)
        code = run(program, &failure);
    if (code == EXIT_SUCCESS)
        print_result(circuit);
    if (code == EXIT_SUCCESS && program->eeprom != NULL && !eeprom_save(circuit->chip.eeprom->eeprom, program->eeprom, &failure))
        code = EXIT_NO_OUTPUT;
    bool closed = script_close(&circuit->script);
    closed = close_file(circuit->events) && closed;
    closed = close_file(circuit->trace) && closed;
    if (!closed && code == EXIT_SUCCESS) {
        fail(&failure, "a file was not fully written: %s", strerror(errno));
        code = EXIT_NO_OUTPUT;
    }
    if (code != EXIT_SUCCESS)
        fprintf(stderr, "probe-cosim: %s\n", failure.text);
    free(program);
    return code;
}
