/*
 * The probe: its states, and the main loop's work. Everything it knows is in here.
 *
 *   off --switch on, look--> check --zeros taken--> look --result lets--> on --limit--> tripped (latched)
 *    ^-------- off (host, button, held pedal), result does not let, clip lost, host silent --------'
 *   tripped --restore, number given back--> check ...    tripped --clear trip--> off
 *
 * An off on the way from `restore` goes back to tripped; the latch is cleared when the switch closes.
 */
#ifndef CORE_PROBE_H
#define CORE_PROBE_H

#include <stdbool.h>
#include <stdint.h>

#include "beeper.h"
#include "calibration.h"
#include "guard.h"
#include "hal.h"
#include "latch.h"
#include "limits.h"
#include "look.h"
#include "press.h"
#include "stream.h"
#include "wire.h"
#include "wire_in.h"
#include "wire_out.h"

enum { PROBE_FIRMWARE = 0x0100, PROBE_HARD_SHORT_MA = 10000, PROBE_SILENCE_MS = 2000 };
#define PROBE_LOOK_MOHM 330000uL /* an enum holds 16 bits on the chip */

/* A small message that waits for room on the line. */
struct notice {
    uint8_t type; /* MESSAGE_SWITCH, MESSAGE_PRESS */
    uint8_t first;
    uint8_t second;
    uint32_t tick_us;
};

enum { NOTICES = 5 };

struct notices {
    struct notice waiting[NOTICES];
    uint8_t count;
};


struct probe {
    /* shared with interrupts */
    struct guard guard;
    struct wire_out out;

    /* of the main loop */
    struct wire_in in;
    uint8_t in_buffer[WIRE_IN_BYTES];
    struct stream stream;
    struct trip_levels levels;
    struct limits limits;
    bool limits_given;
    struct zeros zeros;
    bool zeros_taken;

    uint8_t state;
    bool close_after_look;
    bool zeros_wait_for_look; /* zeros taken, the look closes at the next boundary */
    uint32_t state_from_plans;
    struct look_parameters look_parameters;
    union { /* one after the other */
        struct check check;
        struct look look;
        uint8_t report[LOOK_BYTES]; /* payload of the look result */
        struct trip_levels levels;  /* while on: the other set, see probe_set_limits */
    } work;
    bool look_waiting; /* its result, for room on the line */
    uint32_t look_us;

    struct latch latch;
    struct calibration calibration;
    struct store_job calibration_job;
    bool calibration_writing;
    uint16_t calibration_sequence;

    uint32_t boot_id;
    uint16_t self_test;
    uint16_t rest_j_counts;
    uint8_t inputs;
    uint8_t clip_off_looks;
    struct press button;
    struct press pedal;
    struct beeper beeper;

    uint8_t bytes_allowed; /* of the host's, see command_receive */
    bool host_there;
    uint32_t host_heard_us;
    uint8_t speed;        /* the line's now */
    uint8_t speed_wanted; /* set when all has been sent */
    uint32_t speed_since_ms;

    struct notices notices;
    uint8_t trip_sends;        /* copies still to come after the first */
    bool trip_waiting;
    uint32_t tripped_us;
    uint8_t capture_block;     /* next to send; CAPTURE_BLOCKS = none */
    bool capture_expected;     /* sent once when whole */
    bool status_waiting;
    uint32_t status_plans;
    bool hello_waiting;
    bool self_test_wanted;
    bool stream_wanted_waiting; /* `stream` is answered when what was taken is out */
    uint8_t stream_wanted;
    uint16_t stream_sequence;

    uint8_t looked_slot; /* of the last round */
    uint8_t looked_plan; /* of the last look at inputs and timers */
    uint8_t stalled_plans; /* without a conversion */
    bool converts; /* a conversion came in this plan */
    bool opened_lately;
    uint32_t opened_plans;
    uint8_t current_in_row;
    uint8_t busy_percent;
};

void probe_start(struct probe *probe);
/* One round of the main loop. */
void probe_run(struct probe *probe);
/* Nothing to do until the next interrupt; asked where no interrupt can come between. */
bool probe_may_sleep(const struct probe *probe);

/* ---- for the modules of the probe: transitions ---- */

void probe_enter(struct probe *probe, enum probe_state state, enum switch_by by, uint32_t tick_us);
/* Opens switch and look path; no trip. */
void probe_off(struct probe *probe, enum switch_by by);
void probe_arm(struct probe *probe, const struct look_parameters *parameters, bool close);
void probe_set_limits(struct probe *probe, const struct limits *limits);
void probe_clear_trip(struct probe *probe);
uint16_t probe_self_test_bits(const struct probe *probe);
uint32_t probe_now_us(void);
uint32_t probe_now_ms(void);

#endif
