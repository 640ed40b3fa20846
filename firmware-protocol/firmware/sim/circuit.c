#include "circuit.h"

#include <inttypes.h>
#include <math.h>
#include <stddef.h>
#include <stdlib.h>
#include <string.h>

#include "pins.h"
#include "serial.h"

/*
 * Steps: coarse while nothing is joined, fine for a while after every change of a pin and round the moments asked for, else
 * between. A change of a pin reaches the netlist at its next step, an input the chip at the end of a step: both at most one
 * fine step late, never early.
 */
static const double COARSE_S = 62.5e-6, CLOSED_S = 5e-6, FINE_S = 1e-6;
static const double PIN_SIEMENS = 1 / 25.0; /* an output at 5 V: about 25 ohm (data sheet, typical curves, from memory) */
static const double BROWN_OUT_V = 4.3, BROWN_OUT_BACK_V = 4.35;
static const double WATCHDOG_FIRST_S = 16e-3; /* 2048 periods of 128 kHz; doubled by each step of WDP (data sheet, from memory) */
enum { REG_WDTCSR = 0x60, BIT_WDE = 3, COUNTS = 1024, MAX_LINES = 4 * WIRING_MAX_PINS + 16, LINE_BYTES = 600 };

static struct circuit *circuit_of(struct chip *chip)
{
    return (struct circuit *)((char *)chip - offsetof(struct circuit, chip));
}

/* ---- nodes ---- */

double circuit_volts(const struct circuit *circuit, size_t node)
{
    return circuit->spice.volts[node] - circuit->spice.volts[circuit->ground];
}

/* Between the last two points the nodes are taken to move in straight lines. */
static double volts_at(const struct circuit *circuit, size_t node, double seconds)
{
    double now = circuit_volts(circuit, node);
    double before = circuit->before_volts[node] - circuit->before_volts[circuit->ground];
    double length = circuit->now_s - circuit->before_s;
    double share = length > 0 ? (seconds - circuit->before_s) / length : 1;
    return before + (now - before) * fmin(1, fmax(0, share));
}

/* ---- what the chip asks of its surroundings ---- */

static uint16_t counts(struct chip *chip, uint8_t channel, uint64_t cycle)
{
    struct circuit *circuit = circuit_of(chip);
    if (!circuit->converter_joined[channel])
        return 0;
    double seconds = chip_seconds(cycle);
    double reference = volts_at(circuit, circuit->reference, seconds);
    double share = reference > 0 ? volts_at(circuit, circuit->converter[channel], seconds) / reference : 0;
    return (uint16_t)fmin(COUNTS - 1, fmax(0, floor(share * COUNTS)));
}

static void ports_changed(struct chip *chip)
{
    pins_follow_outputs(circuit_of(chip));
}

static void byte_sent(struct chip *chip, uint8_t byte)
{
    script_heard(&circuit_of(chip)->script, chip->avr->cycle, byte);
}

static bool next_byte(struct chip *chip, uint8_t *byte)
{
    return script_next(&circuit_of(chip)->script, chip->avr->cycle, byte);
}

static void after_reset(struct chip *chip)
{
    struct circuit *circuit = circuit_of(chip);
    pins_follow_outputs(circuit);
    pins_drive_inputs(circuit, true);
    pins_drive_comparator(circuit);
}

static const struct chip_surroundings SURROUNDINGS = {counts, ports_changed, byte_sent, next_byte, after_reset};

/* ---- time ---- */

static void run_chip_to(struct circuit *circuit, uint64_t target)
{
    struct chip *chip = &circuit->chip;
    while (chip->avr->cycle < target && !circuit->stopped) {
        uint64_t due = script_due(&circuit->script);
        uint64_t stop = due > chip->avr->cycle && due < target ? due : target;
        if (due <= chip->avr->cycle)
            serial_pump_receiver(chip);
        chip_wake_at(chip, stop);
        do {
            circuit->stopped = !chip_step(chip);
            pins_follow_outputs(circuit); /* a reset drops a pin without an event */
        } while (chip->avr->cycle < stop && !circuit->stopped);
    }
}

/* The detector holds the chip in reset while its supply is low; its pins are open meanwhile. */
static void watch_brown_out(struct circuit *circuit)
{
    double vcc = circuit_volts(circuit, circuit->supply);
    bool stopped = circuit->clock_stops_s >= 0 && circuit->now_s >= circuit->clock_stops_s;
    if (!circuit->held_in_reset && vcc < BROWN_OUT_V) {
        circuit->held_in_reset = true;
        pins_follow_outputs(circuit);
    } else if (circuit->held_in_reset && !stopped && vcc > BROWN_OUT_BACK_V) {
        circuit->held_in_reset = false;
        chip_reset(&circuit->chip, RESET_BROWN_OUT);
    }
}

/*
 * With its clock stopped the chip does nothing, but the watchdog has an oscillator of its own: a reset opens the pins, and that
 * needs no clock (data sheet, from memory). Counted from the stop, so at most one feeding too late.
 */
static void watch_stopped_clock(struct circuit *circuit)
{
    uint8_t control = circuit->chip.avr->data[REG_WDTCSR];
    unsigned steps = (control & 7u) | (control >> 2 & 8u);
    double timeout_s = WATCHDOG_FIRST_S * (double)(1u << steps);
    if ((control & 1 << BIT_WDE) != 0 && !circuit->held_in_reset && circuit->now_s > circuit->clock_stops_s + timeout_s) {
        circuit->held_in_reset = true;
        pins_follow_outputs(circuit);
    }
}

static void watch_course(struct circuit *circuit, double step_s)
{
    for (size_t i = 0; i < circuit->watched_count; i++) {
        struct watched *of = &circuit->watched[i];
        double volts = circuit->spice.volts[of->node];
        if (step_s > 0)
            of->integral += (of->last + volts) / 2 * step_s;
        if (circuit->now_s == 0 || volts > of->highest) {
            of->highest = volts;
            of->highest_at_s = circuit->now_s;
        }
        if (circuit->now_s == 0 || volts < of->lowest) {
            of->lowest = volts;
            of->lowest_at_s = circuit->now_s;
        }
        of->last = volts;
    }
    if (circuit->trace == NULL || circuit->watched_count == 0)
        return;
    fprintf(circuit->trace, "%.9g", circuit->now_s);
    for (size_t i = 0; i < circuit->watched_count; i++)
        fprintf(circuit->trace, ",%.6g", circuit->watched[i].last);
    fputc('\n', circuit->trace);
}

static bool accepted(void *self, double seconds)
{
    struct circuit *circuit = self;
    circuit->before_s = circuit->now_s;
    circuit->now_s = seconds;
    watch_course(circuit, seconds - circuit->before_s);
    uint64_t target = (uint64_t)(seconds * CHIP_HZ);
    watch_brown_out(circuit);
    if (circuit->hangs_s >= 0 && seconds >= circuit->hangs_s && !circuit->hung && circuit->chip.avr->interrupts.running_ptr == 0) {
        circuit->hung = true;
        chip_hang(&circuit->chip);
    }
    bool clock_runs = circuit->clock_stops_s < 0 || seconds < circuit->clock_stops_s;
    if (clock_runs && !circuit->held_in_reset)
        run_chip_to(circuit, target);
    else if (target > circuit->chip.avr->cycle)
        circuit->chip.avr->cycle = target; /* time continues without the program */
    if (!clock_runs)
        watch_stopped_clock(circuit);
    pins_drive_inputs(circuit, false);
    pins_drive_comparator(circuit);
    memcpy(circuit->before_volts, circuit->spice.volts, sizeof circuit->before_volts);
    return seconds < circuit->for_s && !circuit->stopped;
}

static double source_volts(void *self, const char *name, double seconds)
{
    const struct circuit *circuit = self;
    (void)seconds;
    bool level = strncmp(name, "vlevel", 6) == 0;
    size_t pin = (size_t)strtoul(name + strlen("vlevel"), NULL, 10); /* "vdrive" is as long */
    if (pin >= circuit->wiring.pins)
        return 0;
    if (level)
        return circuit->pin_output[pin] == 2 ? 1 : 0;
    return circuit->pin_output[pin] == 0 ? 0 : 1;
}

static double longest_step(void *self, double seconds)
{
    const struct circuit *circuit = self;
    if (seconds < circuit->fine_until_s)
        return FINE_S;
    for (size_t i = 0; i < circuit->fine_moments; i++)
        if (seconds >= circuit->fine_at_s[i] - COARSE_S && seconds < circuit->fine_at_s[i] + CIRCUIT_FINE_FOR_S)
            return FINE_S;
    for (size_t i = 0; i < circuit->wiring.pins; i++)
        if (circuit->wiring.pin[i].closes && circuit->pin_output[i] == 2)
            return CLOSED_S;
    return seconds < circuit->pulsing_until_s ? CLOSED_S : COARSE_S;
}

/* ---- start ---- */

static void follow_nodes(struct circuit *circuit)
{
    struct wiring *wiring = &circuit->wiring;
    struct spice *spice = &circuit->spice;
    circuit->ground = spice_follow(spice, wiring->ground);
    circuit->reference = spice_follow(spice, wiring->reference);
    circuit->supply = spice_follow(spice, wiring->supply);
    for (size_t i = 0; i < wiring->pins; i++)
        circuit->pin_node[i] = spice_follow(spice, wiring->pin[i].node);
    for (size_t c = 0; c < WIRING_INPUTS; c++) {
        circuit->converter_joined[c] = wiring->converter[c][0] != '\0';
        if (circuit->converter_joined[c])
            circuit->converter[c] = spice_follow(spice, wiring->converter[c]);
    }
    if (wiring->comparator_plus[0] != '\0')
        circuit->plus = spice_follow(spice, wiring->comparator_plus);
    if (wiring->comparator_minus[0] != '\0')
        circuit->minus = spice_follow(spice, wiring->comparator_minus);
    for (size_t i = 0; i < circuit->watched_count; i++)
        circuit->watched[i].node = spice_follow(spice, circuit->watched[i].name);
}

bool circuit_prepare(struct circuit *circuit, const char *elf_path, struct failure *failure)
{
    return chip_init(&circuit->chip, elf_path, &SURROUNDINGS, failure);
}

bool circuit_run(struct circuit *circuit, struct failure *failure)
{
    static char text[MAX_LINES][LINE_BYTES];
    const char *lines[MAX_LINES + 1];
    size_t count = 0;
    const struct wiring *wiring = &circuit->wiring;
    const struct spice_follower follower = {circuit, source_volts, longest_step, accepted};
    follow_nodes(circuit);
    snprintf(text[count++], LINE_BYTES, "the chip in its circuit");
    snprintf(text[count++], LINE_BYTES, ".include \"%s\"", circuit->netlist);
    for (size_t i = 0; i < wiring->pins; i++) {
        const char *node = wiring->pin[i].node;
        snprintf(text[count++], LINE_BYTES, "Vlevel%zu pinlevel%zu 0 external", i, i);
        snprintf(text[count++], LINE_BYTES, "Vdrive%zu pindrive%zu 0 external", i, i);
        snprintf(text[count++], LINE_BYTES, "Bpin%zu %s %s I=V(pindrive%zu)*%.9g*(V(%s,%s)-V(pinlevel%zu)*V(%s,%s))", i, node, wiring->ground, i,
                 PIN_SIEMENS, node, wiring->ground, i, wiring->supply, wiring->ground);
    }
    for (size_t i = 0; i < count; i++)
        lines[i] = text[i];
    lines[count] = NULL;
    chip_power_on(&circuit->chip);
    if (!spice_run(&circuit->spice, &follower, lines, circuit->for_s, COARSE_S, failure))
        return false;
    return !circuit->stopped
           || fail(failure, "the program stopped (slept with interrupts off, or crashed) at cycle %" PRIu64, (uint64_t)circuit->chip.avr->cycle);
}
