#include "board.h"

#include <math.h>
#include <stddef.h>

#include "inputs.h"
#include "serial.h"

enum { BIT_RUN = 0, BIT_LOOK = 2, BIT_PUMP_A = 2, BIT_READ_BACK = 5 };

/* Counts by which the inputs of head and meter move in the read-back where nothing is joined to their clips. */
enum { OPEN_HEAD_MOVES = 128, OPEN_METER_MOVES = 90 };

/* The gate has volts from a while after the pump's first edge to a while after its last (the circuit's own times). */
enum { GATE_FILLS_CYCLES = 1000 * (CHIP_HZ / 1000000), GATE_HOLDS_CYCLES = 1500 * (CHIP_HZ / 1000000) };

static struct board *board_of(struct chip *chip)
{
    return (struct board *)((char *)chip - offsetof(struct board, chip));
}

/* The chip counts its own clock; what is round it goes by the true time. */
static double clock_hz(const struct board *board)
{
    return CHIP_HZ * (1 + board->frontend->clock_share);
}

static double true_seconds(const struct board *board, uint64_t cycles)
{
    return (double)cycles / clock_hz(board);
}

static uint64_t cycles_of(const struct board *board, double seconds)
{
    return (uint64_t)ceil(seconds * clock_hz(board) - 1e-6);
}

/* ---- crossings of the waveform, at their exact time ---- */

static avr_cycle_count_t crossing_timer(avr_t *avr, avr_cycle_count_t when, void *param);

static void crossing_flip(struct crossing *crossing, uint64_t cycle)
{
    struct board *board = crossing->board;
    crossing->above = !crossing->above;
    if (crossing == &board->hard_short) {
        inputs_of_switch(board);
    } else if (crossing->above) {
        board->crossed_cycle = cycle;
        events_crossed(board->events, cycle, crossing->column);
    }
}

/* Absolute cycle of the next passing, 0 when there is none. */
static uint64_t crossing_next(const struct crossing *crossing, uint64_t from_cycle)
{
    const struct board *board = crossing->board;
    int sign = crossing->level < 0 ? -1 : 1;
    double t_s = waveform_next_crossing(board->wave, crossing->column, crossing->level, sign, crossing->above,
                                        true_seconds(board, from_cycle - board->closed_cycle));
    return t_s < 0 ? 0 : board->closed_cycle + cycles_of(board, t_s);
}

static void crossing_arm(struct crossing *crossing, uint64_t from_cycle)
{
    avr_t *avr = crossing->board->chip.avr;
    uint64_t next = crossing_next(crossing, from_cycle);
    avr_cycle_timer_cancel(avr, crossing_timer, crossing);
    if (next != 0)
        avr_cycle_timer_register(avr, next > avr->cycle ? next - avr->cycle : 0, crossing_timer, crossing);
}

static avr_cycle_count_t crossing_timer(avr_t *avr, avr_cycle_count_t when, void *param)
{
    struct crossing *crossing = param;
    (void)avr;
    crossing_flip(crossing, when);
    uint64_t next = crossing_next(crossing, when);
    if (next == 0)
        return 0;
    return next > when ? next : when + 1;
}

static void crossing_start(struct crossing *crossing)
{
    struct board *board = crossing->board;
    if (board->wave->value[crossing->column] == NULL)
        return;
    int sign = crossing->level < 0 ? -1 : 1;
    double first = waveform_at(board->wave, crossing->column, 0);
    if (sign * (first - crossing->level) > 0)
        crossing_flip(crossing, board->closed_cycle);
    crossing_arm(crossing, board->closed_cycle);
}

static void crossing_stop(struct crossing *crossing)
{
    avr_cycle_timer_cancel(crossing->board->chip.avr, crossing_timer, crossing);
    if (crossing->above && crossing == &crossing->board->hard_short)
        crossing_flip(crossing, 0);
    crossing->above = false;
}

/* ---- switch and look path ---- */

static bool gate_has_volts(const struct board *board)
{
    uint64_t now = board->chip.avr->cycle;
    return board->pump_edge_cycle != 0 && now - board->pump_edge_cycle <= GATE_HOLDS_CYCLES
           && board->pump_edge_cycle - board->pump_from_cycle >= GATE_FILLS_CYCLES;
}

/* An edge of the pump; the first after a pause begins to fill the gate. */
static void pump_watch(struct board *board)
{
    bool level = chip_pin_high(&board->chip, 'D', BIT_PUMP_A);
    uint64_t now = board->chip.avr->cycle;
    if (level == board->pump_level)
        return;
    board->pump_level = level;
    if (board->pump_edge_cycle == 0 || now - board->pump_edge_cycle > GATE_HOLDS_CYCLES)
        board->pump_from_cycle = now;
    board->pump_edge_cycle = now;
}

static enum supply_state supply_of_pins(const struct board *board)
{
    if (chip_pin_high(&board->chip, 'B', BIT_RUN) && gate_has_volts(board))
        return SUPPLY_ON;
    return chip_pin_high(&board->chip, 'B', BIT_LOOK) ? SUPPLY_LOOK : SUPPLY_OFF;
}

static void supply_watch(struct board *board)
{
    pump_watch(board);
    enum supply_state state = supply_of_pins(board);
    if (state == board->supply)
        return;
    uint64_t cycle = board->chip.avr->cycle;
    bool was_on = board->supply == SUPPLY_ON;
    board->supply = state;
    set_model_change(&board->set, state, true_seconds(board, cycle));
    events_supply(board->events, cycle, state);
    if (state == SUPPLY_ON) {
        board->closed_cycle = cycle;
        board->crossed_cycle = 0;
        inputs_of_switch(board);
        crossing_start(&board->hard_short);
        for (size_t i = 0; i < board->crossings; i++)
            crossing_start(&board->crossing[i]);
    } else if (was_on) {
        board->opened_cycle = cycle;
        if (board->crossed_cycle != 0 && cycle - board->crossed_cycle > board->longest_reaction_cycles)
            board->longest_reaction_cycles = cycle - board->crossed_cycle;
        crossing_stop(&board->hard_short);
        inputs_of_switch(board);
        for (size_t i = 0; i < board->crossings; i++)
            crossing_stop(&board->crossing[i]);
    }
}

static void ports_changed(struct chip *chip)
{
    supply_watch(board_of(chip));
}

/* ---- converter ---- */

/* A floating pin of the read-back moves what is joined to nothing; rails that are, are at the end already. */
static double read_back_moves(const struct board *board, enum channel channel)
{
    bool head = channel == CHANNEL_H;
    if (chip_pin_driven(&board->chip, 'B', BIT_READ_BACK) || (!head && channel != CHANNEL_M))
        return 0;
    bool joined = board->wave->value[head ? WAVE_HEAD_V : WAVE_METER_V] != NULL;
    return joined ? 0 : head ? OPEN_HEAD_MOVES : OPEN_METER_MOVES;
}

static uint16_t counts(struct chip *chip, uint8_t channel, uint64_t cycle)
{
    struct board *board = board_of(chip);
    double value = set_model_value(&board->set, (enum channel)channel, true_seconds(board, cycle));
    double moved = read_back_moves(board, (enum channel)channel) + noise_next(&board->noise);
    uint16_t counts = frontend_counts(board->frontend, (enum channel)channel, value, moved);
    fed_conversion(&board->fed, chip->conversion.start_cycle, channel, counts);
    return counts;
}

/* ---- serial line ---- */

static void byte_sent(struct chip *chip, uint8_t byte)
{
    struct board *board = board_of(chip);
    struct wire_frame frame;
    bridge_put(board->bridge, byte);
    if (!wire_receive(&board->from_probe, byte, &frame))
        return;
    fed_compare(&board->fed, &frame);
    enum stream_change change = stream_probe_frame(&board->stream, &frame);
    if (change == STREAM_STARTED)
        board->bridge->bytes_lost = 0;
    if (change == STREAM_STOPPED)
        events_sent(board->events, board->stream.conversions_sent, board->bridge->bytes_lost);
}

static bool next_byte(struct chip *chip, uint8_t *byte)
{
    struct board *board = board_of(chip);
    if (!bridge_get(board->bridge, byte))
        return false;
    stream_host_byte(&board->stream, *byte);
    return true;
}

void board_pump_receiver(struct board *board)
{
    if (board->bridge->from_host.count > 0)
        serial_pump_receiver(&board->chip);
}

/* ---- start, reset, steps ---- */

static void after_reset(struct chip *chip)
{
    struct board *board = board_of(chip);
    fed_restart(&board->fed);
    supply_watch(board);
    inputs_drive_all(board);
}

static const struct chip_surroundings SURROUNDINGS = {counts, ports_changed, byte_sent, next_byte, after_reset};

bool board_init(struct board *board, const char *elf_path, struct failure *failure)
{
    return chip_init(&board->chip, elf_path, &SURROUNDINGS, failure);
}

void board_power_on(struct board *board)
{
    set_model_init(&board->set, board->wave, board->frontend);
    board->hard_short = (struct crossing){WAVE_SUPPLY_A, board->frontend->hard_short_a, false, board};
    for (size_t i = 0; i < board->crossings; i++)
        board->crossing[i].board = board;
    chip_power_on(&board->chip);
}

static void apply_change(struct board *board, const struct input_change *change)
{
    if (!change->is_hard_short) {
        board->frontend->input[change->input] = change->level;
        inputs_drive(board, change->input);
        return;
    }
    board->frontend->hard_short_a = change->hard_short_a;
    board->hard_short.level = change->hard_short_a;
    if (board->supply == SUPPLY_ON && board->wave->value[WAVE_SUPPLY_A] != NULL) {
        double amperes = set_model_value(&board->set, CHANNEL_I, true_seconds(board, board->chip.avr->cycle));
        board->hard_short.above = amperes > change->hard_short_a;
        crossing_arm(&board->hard_short, board->chip.avr->cycle);
    }
    inputs_of_switch(board);
}

uint64_t board_next_change(const struct board *board)
{
    if (board->next_change == board->frontend->changes)
        return UINT64_MAX;
    return (uint64_t)(board->frontend->change[board->next_change].at_ms * clock_hz(board) / 1000);
}

bool board_step(struct board *board)
{
    bool running = chip_step(&board->chip);
    supply_watch(board); /* a reset or a stray write drops the pin without an event */
    while (board_next_change(board) <= board->chip.avr->cycle)
        apply_change(board, &board->frontend->change[board->next_change++]);
    return running;
}
