#include "probe.h"

#include <string.h>

#include "arming.h"
#include "command.h"
#include "compiler.h"
#include "report.h"
#include "state.h"
#include "tripped.h"

enum {
    CLIP_OFF_LOOKS = 5, /* 10 ms, so that a scraping clip is no trip */
    GATE_MISSED_LOOKS = 10, /* 20 ms: a surge is over before */
    HOST_GONE_PLANS = 1500, /* 3 s */
    SPEED_TRY_PLANS = 350,  /* 700 ms */
    STATUS_PLANS = 100,
    STALLED_PLANS = 10, /* no conversion for 20 ms: the converter does not convert */
    CONVERSIONS_A_ROUND = 16,
    SLOTS_A_ROUND = 8 /* 0.5 ms; waking for each conversion would cost more than the work itself */
};

uint32_t probe_now_us(void)
{
    struct instant now = hal_now();
    return instant_us(&now);
}

void probe_start(struct probe *p)
{
    wire_in_start(&p->in, p->in_buffer, sizeof p->in_buffer);
    wire_out_delimit(&p->out);
    stream_start(&p->stream, &p->guard.queue.lost);
    guard_start(&p->guard);
    p->capture_block = CAPTURE_BLOCKS;
    p->boot_id = store_count_boot();
    probe_load_calibration(p);
    latch_load(&p->latch);
    p->self_test = hal_self_test();
    p->limits.silence_ms = PROBE_SILENCE_MS;
    p->inputs = probe_inputs(p);
    p->state = latch_is_set(&p->latch) ? STATE_TRIPPED : STATE_OFF;
    hal_tripped_lamp(p->state == STATE_TRIPPED);
    p->hello_waiting = true;
    p->looked_plan = hal_plan_low(); /* hello goes out in plan 0, when time has begun */
}

void probe_load_calibration(struct probe *p)
{
    struct zero_band band;
    calibration_load(&p->calibration);
    calibration_zero_band(&p->calibration, CHANNEL_J, &band);
    p->over_j_counts = band.highest_counts;
}

uint8_t probe_inputs(const struct probe *p)
{
    uint8_t inputs = hal_inputs();
    return p->limiter_tested ? (uint8_t)(inputs | INPUT_LIMITER_TESTED) : inputs;
}

uint16_t probe_self_test_bits(const struct probe *p)
{
    uint16_t bits = p->self_test;
    if (p->calibration.state == STORE_DAMAGED)
        bits |= SELF_TEST_CALIBRATION;
    if (p->latch.damaged)
        bits |= SELF_TEST_LATCH;
    if (hal_reset_cause() & 8)
        bits |= SELF_TEST_WATCHDOG;
    return bits;
}

/* ---- conversions ---- */

static void take_conversions(struct probe *p)
{
    struct queue *queue = &p->guard.queue;
    CORE_NEAR(queue);
    uint8_t waiting = queue_waiting(queue);
    if (waiting > queue->highest)
        queue->highest = waiting;
    if (waiting > 0)
        p->converts = true;
    bool listens = arming_listens(p);
    for (uint8_t left = CONVERSIONS_A_ROUND; left > 0; left--) {
        if (p->stream.full && !stream_ready(&p->stream, &p->out))
            return;
        if (!listens && stream_wants_fours(&p->stream) && queue_at_four(queue)) {
            if (queue_waiting(queue) < 4)
                return;
            if (stream_raw_four(&p->stream, queue))
                continue;
        }
        if (!queue_take(queue))
            return;
        stream_conversion(&p->stream, &p->out, &queue->taken);
        if (listens && (conversion_channel(&queue->taken) < CHANNEL_R1 || p->step == ARMING_CLIPS))
            arming_conversion(p, &queue->taken);
    }
}

/* ---- every 2 ms ---- */

/* Of the pedal; a release opens where it is held to run. */
static enum press_kind press_that_opens(uint8_t pedal_job)
{
    if (pedal_job == PEDAL_HOLD_TO_RUN)
        return PRESS_NOTHING;
    return pedal_job == PEDAL_MARK ? PRESS_HELD : PRESS_DOWN;
}

static CORE_RARE void pressed(struct probe *p, struct press *press, bool down, enum press_source source,
                              uint16_t now_plans)
{
    enum press_kind kind = press_look(press, down, now_plans);
    if (kind == PRESS_NOTHING)
        return;
    notices_put(&p->notices, MESSAGE_PRESS, (uint8_t)source, (uint8_t)kind, probe_now_us());
    if (source == PRESS_BUTTON && kind == PRESS_DOWN)
        state_off(p, BY_BUTTON);
    if (source == PRESS_PEDAL && kind == press_that_opens(p->pedal_job))
        state_off(p, BY_PEDAL);
}

/* On only while the foot is down. */
static void hold_to_run(struct probe *p)
{
    bool joined = p->state == STATE_CHECK || p->state == STATE_LOOK || p->state == STATE_ON;
    if (p->pedal_job == PEDAL_HOLD_TO_RUN && joined && !p->pedal.down)
        state_off(p, BY_PEDAL);
}

static void look_at_inputs(struct probe *p, uint16_t now_plans)
{
    uint8_t inputs = probe_inputs(p);
    p->inputs = inputs;
    pressed(p, &p->button, (inputs & INPUT_BUTTON) != 0, PRESS_BUTTON, now_plans);
    pressed(p, &p->pedal, (inputs & INPUT_PEDAL) != 0, PRESS_PEDAL, now_plans);
    hold_to_run(p);
    if (inputs & INPUT_CHASSIS_CLIP)
        p->clip_off_looks = 0;
    else if (p->clip_off_looks < CLIP_OFF_LOOKS)
        p->clip_off_looks++;
    else
        tripped_lost(p, TRIP_CHASSIS_CLIP, BY_CHASSIS_CLIP, inputs);
}

/*
 * Half a pump gives the gate half its volts: the switch drops some of the supply's, and warms. A current at the
 * limiter's own level takes gate volts too, so one look counts for nothing.
 */
static void see_to_gate(struct probe *p)
{
    if (p->state != STATE_ON || hal_gate_seen() || hal_limiting_now()) {
        p->gate_missed_looks = 0;
        return;
    }
    if (++p->gate_missed_looks < GATE_MISSED_LOOKS)
        return;
    p->gate_missed_looks = 0;
    p->self_test |= SELF_TEST_GATE;
    tripped_lost(p, TRIP_SELF_TEST, BY_LOOK, probe_self_test_bits(p));
}

static void listen_for_host(struct probe *p, uint8_t plans_passed)
{
    if (p->silent_plans <= UINT16_MAX - UINT8_MAX)
        p->silent_plans = (uint16_t)(p->silent_plans + plans_passed);
    /* One plan more: the plan in which the frame came may have been counted after it. */
    if (p->silent_plans > p->limits.silence_ms / 2u + 1u)
        tripped_lost(p, TRIP_HOST_SILENCE, BY_HOST_SILENCE, 0);
    if (p->silent_plans < HOST_GONE_PLANS)
        return;
    p->host_there = false;
    p->speed_tried_plans = (uint16_t)(p->speed_tried_plans + plans_passed);
    if (p->speed_tried_plans >= SPEED_TRY_PLANS) {
        p->speed_tried_plans = 0;
        p->speed_wanted = p->speed == HAL_SPEED_500K ? HAL_SPEED_250K : HAL_SPEED_500K;
    }
}

static void set_speed(struct probe *p)
{
    if (p->speed == p->speed_wanted || wire_out_used(&p->out) != 0 || !hal_uart_idle())
        return;
    p->speed = p->speed_wanted;
    hal_uart_speed((enum hal_speed)p->speed);
}

static void see_to_converter(struct probe *p)
{
    p->stalled_plans = p->converts || p->stream.full ? 0 : (uint8_t)(p->stalled_plans + 1);
    p->converts = false;
    if (p->stalled_plans < STALLED_PLANS)
        return;
    p->stalled_plans = 0;
    p->self_test |= SELF_TEST_CONVERTER;
    tripped_lost(p, TRIP_SELF_TEST, BY_LOOK, probe_self_test_bits(p));
}

static void every_plan(struct probe *p, uint8_t plans_passed)
{
    uint16_t now_plans = hal_plans();
    look_at_inputs(p, now_plans);
    listen_for_host(p, plans_passed);
    tripped_tell_again(p, now_plans);
    beeper_run(&p->beeper, now_plans);
    see_to_converter(p);
    see_to_gate(p);
    p->status_plans = (uint8_t)(p->status_plans + plans_passed);
    if (p->status_plans >= STATUS_PLANS) {
        p->status_plans = 0;
        p->busy_percent = hal_busy_percent();
        p->status_waiting = p->status_waiting || p->host_there;
    }
}

static void run_self_test(struct probe *p)
{
    p->self_test_wanted = false;
    p->self_test = hal_self_test();
    p->converts = true; /* the converter was lent meanwhile */
    p->hello_waiting = true;
}

static void store(struct probe *p)
{
    if (latch_run(&p->latch) || !p->calibration_writing)
        return;
    store_run(&p->calibration_job);
    if (!store_busy(&p->calibration_job) && hal_eeprom_ready())
        command_calibration_written(p);
}

/* Conversions at once; everything else once a plan, and after a frame or a trip that wants an answer. */
void probe_run(struct probe *p)
{
    p->looked_slot = hal_slot();
    bool answer = tripped_take(p);
    take_conversions(p);
    answer = command_receive(p) || answer;
    uint8_t plan = hal_plan_low();
    uint8_t plans_passed = (uint8_t)(plan - p->looked_plan);
    if (plans_passed != 0) {
        p->looked_plan = plan;
        every_plan(p, plans_passed);
        answer = true;
    }
    if (!answer)
        return;
    tripped_take(p);
    if (p->self_test_wanted)
        run_self_test(p);
    store(p);
    report_run(p);
    set_speed(p);
    hal_watchdog_feed();
}

/* Asked after every interrupt, so it costs little: rounds are eight slots apart, whatever comes in between. */
bool probe_may_sleep(const struct probe *p)
{
    return ((hal_slot() ^ p->looked_slot) & (uint8_t)~(SLOTS_A_ROUND - 1)) == 0;
}
