/*
 * The probe: its states, and the main loop's work. Everything it knows is in here.
 *
 *   off --switch on, look--> check --zeros taken, clips and limiter tested--> look --result lets--> on --limit--> tripped
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
#include "check.h"
#include "clips.h"
#include "guard.h"
#include "hal.h"
#include "latch.h"
#include "limits.h"
#include "look.h"
#include "notices.h"
#include "press.h"
#include "stream.h"
#include "wire.h"
#include "wire_in.h"
#include "wire_out.h"

enum { PROBE_FIRMWARE = 0x0200, PROBE_HARD_SHORT_MA = 10000, PROBE_SILENCE_MS = 2000 };
#define PROBE_LOOK_MOHM 330000uL /* an enum holds 16 bits on the chip */

/* From the request to switch on to the closing; conversions go to the one that stands. */
enum arming_step {
    ARMING_NONE,
    ARMING_CHECK,   /* nothing flows, volts fall, zeros */
    ARMING_CLIPS,   /* read-back; also in the states off and tripped, when asked for */
    ARMING_LIMITER, /* gate volts with the pin low: the set must stay dark */
    ARMING_AWAIT_LOOK,
    ARMING_LOOK,
    ARMING_READY /* gate volts again, then the switch */
};

/* The small ones first: the chip reaches the first 64 bytes from a pointer with the shortest instructions. */
struct probe {
    uint8_t state;
    uint8_t inputs;
    bool close_after_look;
    uint8_t step; /* enum arming_step */
    bool supply_seen; /* limiting was seen when the test of the limiter began: volts, not current */
    uint8_t clips;    /* of the last read-back */
    bool limiter_tested;
    uint8_t pedal_job;
    uint16_t step_plans; /* when it began, modulo 65536 */
    bool zeros_taken;
    bool limits_given;
    bool look_waiting; /* its result, for room on the line */
    bool hello_waiting;
    bool self_test_wanted;
    bool status_waiting;
    bool stream_wanted_waiting; /* `stream` is answered when what was taken is out */
    uint8_t stream_wanted;
    uint16_t stream_sequence;
    uint8_t bytes_allowed; /* of the host's, see command_receive */
    bool host_there;
    uint8_t speed;        /* the line's now */
    uint8_t speed_wanted; /* set when all has been sent */
    uint8_t looked_slot; /* of the last round */
    uint8_t looked_plan; /* of the last look at inputs and timers */
    uint8_t stalled_plans; /* without a conversion */
    bool converts; /* a conversion came in this plan */
    uint8_t clip_off_looks;
    uint8_t gate_missed_looks;
    bool opened_lately;
    uint8_t current_in_row;
    uint8_t shunt_row;     /* conversions of V above it */
    uint16_t shunt_over_v; /* more than the look foretold; 0 = not watched */
    bool trip_waiting;
    uint8_t trip_sends;    /* copies still to come after the first */
    uint8_t capture_block; /* next to send; CAPTURE_BLOCKS = none */
    bool capture_expected; /* sent once when whole */
    bool calibration_writing;
    uint16_t self_test;
    uint16_t over_j_counts; /* above it J is a current */
    struct zeros zeros;
    uint16_t dark_v_16ths; /* V before the test of the limiter, as it was */
    uint32_t host_heard_us;
    /* plans modulo 65536 */
    uint16_t state_from_plans;
    uint16_t opened_plans;
    uint16_t tripped_plans;
    uint16_t silent_plans; /* since the last valid frame; held when it is long ago */
    uint16_t speed_tried_plans;
    uint8_t status_plans;
    uint32_t look_us;
    uint32_t boot_id;
    uint16_t calibration_sequence;
    uint8_t busy_percent;

    struct calibration calibration;
    struct press button;
    struct press pedal;
    struct beeper beeper;
    struct notices notices;
    struct store_job calibration_job;
    struct look_parameters look_parameters;
    struct limits limits;
    struct trip_levels levels;
    union { /* one after the other */
        struct check check;
        struct clips clips;
        struct look look;
        struct trip_levels levels;  /* while on: the other set, see probe_set_limits */
    } work;
    struct latch latch;
    struct wire_in in;
    struct stream stream;
    uint8_t in_buffer[WIRE_IN_BYTES];

    /* shared with interrupts */
    struct guard guard;
    struct wire_out out;
};

void probe_start(struct probe *probe);
/* One round of the main loop. */
void probe_run(struct probe *probe);
/* Nothing to do until the next interrupt; asked where no interrupt can come between. */
bool probe_may_sleep(const struct probe *probe);

/* ---- for the modules of the probe: transitions ---- */

/* What the hardware sees, and what the core knows. */
uint8_t probe_inputs(const struct probe *probe);
/* Payloads that passed their checks. */
void probe_arm(struct probe *probe, const uint8_t *look_parameters, bool close);
/* After it was written, too. */
void probe_load_calibration(struct probe *probe);
uint16_t probe_self_test_bits(const struct probe *probe);
uint32_t probe_now_us(void);

#endif
