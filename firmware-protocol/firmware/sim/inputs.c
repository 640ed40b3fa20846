#include "inputs.h"

#include "board.h"

enum { BIT_REVERSED = 1, BIT_ACROSS = 7 };

/* Where each digital input sits and the level it has when it is true; those without a pin of their own have port 0. */
static const struct {
    char port;
    uint8_t bit;
    bool high_when_true;
} PIN_OF[INPUTS] = {
    [INPUT_CHASSIS_CLIP] = {'D', 6, false},
    [INPUT_BUTTON] = {'D', 4, false},
    [INPUT_PEDAL] = {'D', 5, false},
};

static bool level_of(const struct board *board, enum digital_input input)
{
    return board->frontend->input[input] == PIN_OF[input].high_when_true;
}

static void drive_pin(struct board *board, enum digital_input input)
{
    if (PIN_OF[input].port != 0)
        chip_drive(&board->chip, PIN_OF[input].port, PIN_OF[input].bit, level_of(board, input));
}

/*
 * Low = volts across the module: while the switch is on the limiter holds the current, while it is open a supply is
 * there, the right way round.
 */
static bool across_level(const struct board *board)
{
    if (board->supply == SUPPLY_ON)
        return !board->hard_short.above;
    return !board->frontend->input[INPUT_SUPPLY_PRESENT] || board->frontend->input[INPUT_SUPPLY_REVERSED];
}

/* Low = while the switch is on its gate has volts, while it is open the supply is reversed. */
static bool reversed_level(const struct board *board)
{
    return board->supply != SUPPLY_ON && !board->frontend->input[INPUT_SUPPLY_REVERSED];
}

/* The two pins whose meaning goes with the switch. */
static void drive_across(struct board *board)
{
    chip_drive(&board->chip, 'D', BIT_ACROSS, across_level(board));
    chip_drive(&board->chip, 'B', BIT_REVERSED, reversed_level(board));
}

static void declare(struct board *board)
{
    for (char port = 'B'; port <= 'D'; port += 2) {
        uint8_t mask = 0, levels = 0;
        for (int i = 0; i < INPUTS; i++) {
            if (PIN_OF[i].port != port)
                continue;
            mask |= (uint8_t)(1u << PIN_OF[i].bit);
            if (level_of(board, (enum digital_input)i))
                levels |= (uint8_t)(1u << PIN_OF[i].bit);
        }
        if (port == 'D') {
            mask |= 1u << BIT_ACROSS;
            if (across_level(board))
                levels |= 1u << BIT_ACROSS;
        } else if (port == 'B') {
            mask |= 1u << BIT_REVERSED;
            if (reversed_level(board))
                levels |= 1u << BIT_REVERSED;
        }
        chip_declare_driven(&board->chip, port, mask, levels);
    }
}

void inputs_of_switch(struct board *board)
{
    declare(board);
    drive_across(board);
}

void inputs_drive(struct board *board, enum digital_input input)
{
    declare(board);
    drive_pin(board, input);
    drive_across(board);
}

void inputs_drive_all(struct board *board)
{
    declare(board);
    for (int i = 0; i < INPUTS; i++)
        drive_pin(board, (enum digital_input)i);
    inputs_of_switch(board);
}
