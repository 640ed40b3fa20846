#include "pins.h"

#include <inttypes.h>
#include <math.h>

static const double HIGH_SHARE = 0.6, LOW_SHARE = 0.3; /* of VCC; data sheet, input levels (from memory) */
static const double PULSING_FOR_S = 2e-3;
enum { MV_PER_V = 1000 };

static void log_pin(struct circuit *circuit, const struct wired_pin *pin, const char *word)
{
    uint64_t cycle = circuit->chip.avr->cycle;
    if (circuit->events != NULL)
        fprintf(circuit->events, "{\"cycle\":%" PRIu64 ",\"t_us\":%" PRIu64 ",\"pin\":\"P%c%u\",\"node\":\"%s\",\"level\":\"%s\"}\n", cycle, cycle / 16,
                pin->port, pin->bit, pin->node, word);
}

void pins_follow_outputs(struct circuit *circuit)
{
    static const char *const WORDS[] = {"open", "low", "high"};
    for (size_t i = 0; i < circuit->wiring.pins; i++) {
        const struct wired_pin *pin = &circuit->wiring.pin[i];
        bool driven = chip_pin_driven(&circuit->chip, pin->port, pin->bit) && !circuit->held_in_reset;
        uint8_t output = driven ? (chip_pin_high(&circuit->chip, pin->port, pin->bit) ? 2 : 1) : 0;
        if (output == circuit->pin_output[i])
            continue;
        circuit->pin_output[i] = output;
        if (pin->pulses) {
            circuit->pulsing_until_s = chip_seconds(circuit->chip.avr->cycle) + PULSING_FOR_S;
            continue;
        }
        circuit->fine_until_s = chip_seconds(circuit->chip.avr->cycle) + CIRCUIT_FINE_FOR_S;
        log_pin(circuit, pin, WORDS[output]);
    }
}

void pins_drive_inputs(struct circuit *circuit, bool all)
{
    uint8_t mask[2] = {0, 0}, levels[2] = {0, 0};
    double vcc = circuit_volts(circuit, circuit->supply);
    bool changed[WIRING_MAX_PINS];
    for (size_t i = 0; i < circuit->wiring.pins; i++) {
        const struct wired_pin *pin = &circuit->wiring.pin[i];
        bool was = circuit->pin_level[i];
        double volts = circuit_volts(circuit, circuit->pin_node[i]);
        circuit->pin_level[i] = volts > (was ? LOW_SHARE : HIGH_SHARE) * vcc;
        changed[i] = all || was != circuit->pin_level[i];
        if (chip_pin_driven(&circuit->chip, pin->port, pin->bit)) {
            changed[i] = false;
            continue;
        }
        mask[pin->port == 'D'] |= (uint8_t)(1u << pin->bit);
        levels[pin->port == 'D'] |= (uint8_t)((unsigned)circuit->pin_level[i] << pin->bit);
    }
    bool any = false;
    for (size_t i = 0; i < circuit->wiring.pins; i++)
        any |= changed[i];
    if (!any)
        return;
    chip_declare_driven(&circuit->chip, 'B', mask[0], levels[0]);
    chip_declare_driven(&circuit->chip, 'D', mask[1], levels[1]);
    for (size_t i = 0; i < circuit->wiring.pins; i++)
        if (changed[i])
            chip_drive(&circuit->chip, circuit->wiring.pin[i].port, circuit->wiring.pin[i].bit, circuit->pin_level[i]);
}

static uint32_t millivolts(double volts)
{
    return (uint32_t)lround(fmin(CHIP_VCC_MV, fmax(0, volts * MV_PER_V)));
}

void pins_drive_comparator(struct circuit *circuit)
{
    if (circuit->wiring.comparator_plus[0] == '\0' || circuit->wiring.comparator_minus[0] == '\0')
        return;
    double plus = circuit_volts(circuit, circuit->plus), minus = circuit_volts(circuit, circuit->minus);
    /* Whole millivolts must not decide which of two close levels is the higher one. */
    uint32_t minus_mv = millivolts(minus);
    chip_compare(&circuit->chip, plus > minus ? (uint32_t)fmax(minus_mv + 1, millivolts(plus)) : (uint32_t)fmin(minus_mv, millivolts(plus)),
                 minus_mv);
}
