#include "probe.h"

#include "bytes.h"
#include "command.h"
#include "compiler.h"
#include "report.h"

enum {
    CLIP_OFF_LOOKS = 5, /* 10 ms, so that a scraping clip is no trip */
    SPEED_TRY_MS = 700,
    STALLED_PLANS = 10, /* no conversion for 20 ms: the converter does not convert */
    CONVERSIONS_A_ROUND = 16,
    SLOTS_A_ROUND = 8, /* 0.5 ms; waking for each conversion would cost more than the work itself */
    SETTLE_AFTER_OPEN_PLANS = 50,  /* 100 ms for clamps and catch path */
    WATCH_AFTER_OPEN_PLANS = 550,
    OPEN_CURRENT_COUNTS = 4,
    OPEN_CURRENT_IN_ROW = 100      /* 200 ms */
};

#define HOST_GONE_US 3000000uL

uint32_t probe_now_us(void)
{
    struct instant now = hal_now();
    return instant_us(&now);
}

uint32_t probe_now_ms(void)
{
    struct instant now = hal_now();
    return instant_ms(&now);
}

void probe_start(struct probe *p)
{
    wire_out_start(&p->out);
    wire_in_start(&p->in, p->in_buffer, sizeof p->in_buffer);
    stream_start(&p->stream, &p->guard.queue.lost);
    guard_start(&p->guard);
    p->capture_block = CAPTURE_BLOCKS;
    p->boot_id = store_count_boot();
    calibration_load(&p->calibration);
    p->rest_j_counts = calibration_rest_counts(&p->calibration, CHANNEL_J);
    latch_load(&p->latch);
    p->self_test = (uint16_t)(p->self_test | hal_self_test());
    p->limits.silence_ms = PROBE_SILENCE_MS;
    p->inputs = hal_inputs();
    p->state = latch_is_set(&p->latch) ? STATE_TRIPPED : STATE_OFF;
    hal_tripped_lamp(p->state == STATE_TRIPPED);
    p->hello_waiting = true;
    p->speed_since_ms = HOST_GONE_US / 1000;
    p->looked_plan = hal_plan_low(); /* hello goes out in plan 0, when time has begun */
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

void probe_enter(struct probe *p, enum probe_state state, enum switch_by by, uint32_t tick_us)
{
    if (p->state == STATE_ON && state != STATE_ON) {
        p->opened_lately = true;
        p->opened_plans = hal_now().plans;
        p->current_in_row = 0;
    }
    p->state = (uint8_t)state;
    p->state_from_plans = hal_now().plans;
    hal_tripped_lamp(state == STATE_TRIPPED);
    report_notice(p, MESSAGE_SWITCH, (uint8_t)state, (uint8_t)by, tick_us);
}

/* ---- off, arm, trip ---- */

void probe_off(struct probe *p, enum switch_by by)
{
    guard_open(&p->guard);
    if (p->guard.claimed)
        return; /* a trip was first; it is taken in this round */
    p->zeros_wait_for_look = false;
    enum probe_state rest = latch_is_set(&p->latch) ? STATE_TRIPPED : STATE_OFF;
    if (p->state != rest)
        probe_enter(p, rest, by, probe_now_us());
}

void probe_arm(struct probe *p, const struct look_parameters *parameters, bool close)
{
    p->look_parameters = *parameters;
    p->close_after_look = close;
    p->zeros_wait_for_look = false;
    p->capture_block = CAPTURE_BLOCKS;
    p->capture_expected = false;
    capture_lend(&p->guard.capture);
    p->look_waiting = false;
    check_start(&p->work.check, hal_now().plans, p->rest_j_counts,
                calibration_rest_counts(&p->calibration, CHANNEL_V));
    probe_enter(p, STATE_CHECK, BY_USER, probe_now_us());
}

void probe_set_limits(struct probe *p, const struct limits *limits)
{
    p->limits = *limits;
    p->limits_given = true;
    if (!p->guard.armed && !p->guard.on)
        return;
    /* The interrupt goes on with the old ones until the new ones are whole. */
    struct trip_levels *levels = p->guard.watch.levels == &p->levels ? &p->work.levels : &p->levels;
    trip_levels_set(levels, &p->limits, &p->zeros);
    uint8_t held = hal_interrupts_hold();
    p->guard.watch.levels = levels;
    hal_interrupts_release(held);
}

void probe_clear_trip(struct probe *p)
{
    latch_clear(&p->latch);
    probe_enter(p, STATE_OFF, BY_USER, probe_now_us());
}

static void closed(struct probe *p)
{
    if (latch_is_set(&p->latch)) /* nothing is written without need: a reset while it is would read as damaged */
        latch_clear(&p->latch);
    probe_enter(p, STATE_ON, BY_USER, plan_us(hal_path_since_plan(), 0));
}

/* Only trips are asked for: a step of the channel back for each conversion of the row but the last. */
static uint32_t crossed_us(const struct probe *p, const struct guard_finding *finding, uint32_t decided_us)
{
    if (finding->cause == TRIP_HOST_SILENCE)
        return p->host_heard_us;
    if (finding->cause == TRIP_HARD_SHORT)
        return instant_us(&finding->pin_low);
    uint16_t slots = (uint16_t)((finding->confirmed - 1u) * trip_step_slots(finding->channel)); /* even for all */
    return decided_us - slots * 125u / 2u;
}

static CORE_RARE void tripped(struct probe *p)
{
    /* Nothing writes there again before the next closing. */
    const struct guard_finding *finding = &p->guard.finding;
    p->guard.claimed = false;
    if (p->state != STATE_ON)
        closed(p); /* it closed and tripped before the main loop saw the first conversion */
    uint32_t decided = plan_us(finding->decided_plans, finding->decided_slot);
    uint32_t pin_low = instant_us(&finding->pin_low);
    const struct trip_levels *levels = p->guard.watch.levels;
    uint8_t *record = p->latch.record;
    uint16_t number = latch_next_number(&p->latch);
    uint16_t limit = trip_limit(levels, &p->limits, &p->zeros, (enum trip_cause)finding->cause, finding->channel,
                                finding->value);
    bytes_put_u16(record + LATCH_NUMBER, number);
    record[LATCH_CAUSE] = finding->cause;
    record[LATCH_CHANNEL] = finding->channel;
    record[LATCH_CONFIRMED] = finding->confirmed;
    record[LATCH_RESERVED] = 0;
    bytes_put_u32(record + LATCH_CROSSED, crossed_us(p, finding, decided));
    bytes_put_u32(record + LATCH_DECIDED, decided);
    bytes_put_u16(record + LATCH_VALUE, finding->value);
    bytes_put_u16(record + LATCH_LIMIT, limit);
    bytes_put_u32(record + LATCH_I2T, p->guard.watch.i2t_counts2);
    bytes_put_u32(record + LATCH_I2T_LIMIT, p->limits.i2t_budget_counts2);
    bytes_put_u16(record + LATCH_BOOT, (uint16_t)p->boot_id);
    bytes_put_u32(record + LATCH_TICK, pin_low);
    latch_set(&p->latch);
    struct capture *capture = &p->guard.capture;
    uint32_t last_i_plans = capture->last_slot > finding->decided_slot ? finding->decided_plans - 1 : finding->decided_plans;
    capture->decided_us = plan_us(last_i_plans, capture->last_slot);
    capture->number = number;
    p->capture_expected = true;
    p->zeros_wait_for_look = false;
    probe_enter(p, STATE_TRIPPED, BY_TRIP, pin_low);
    p->trip_waiting = true;
    p->trip_sends = 2;
    p->tripped_us = probe_now_us();
    beeper_sound(&p->beeper, SOUND_TRIP, probe_now_ms());
}

/* Something that must be there is gone: a trip while on, an off before. */
static void lost(struct probe *p, enum trip_cause cause, enum switch_by by, uint16_t value)
{
    if (guard_trip(&p->guard, cause, value) || p->guard.claimed)
        return;
    if (p->state == STATE_CHECK || p->state == STATE_LOOK)
        probe_off(p, by);
}

/* ---- conversions ---- */

/* Some conversions in the queue are older than the state that they meet. */
static bool before(uint32_t plans, uint32_t than_plans)
{
    return plans - than_plans > UINT32_MAX / 2;
}

static CORE_RARE void end_look(struct probe *p, enum look_outcome outcome, const struct conversion *conversion)
{
    bool closes = outcome <= LOOK_SKIPPED && p->close_after_look;
    uint8_t *report = p->work.report; /* in the place of the look, so that is read first */
    uint16_t pairs = 0;
    uint16_t end_v = 0;
    uint16_t end_j = 0;
    uint32_t sum_v = 0;
    uint32_t sum_j = 0;
    uint16_t duration_ms = 0;
    if (p->state == STATE_LOOK) {
        const struct look *look = &p->work.look;
        pairs = look->pairs;
        end_v = look_end_v_16ths(look);
        end_j = look_end_j_16ths(look);
        sum_v = look->sum_v;
        sum_j = look->sum_j;
        duration_ms = (uint16_t)(pairs * LOOK_PAIR_MS);
    } else if (outcome == LOOK_CURRENT_WHILE_OFF || outcome == LOOK_VOLTS_STAY) {
        duration_ms = (uint16_t)((conversion->plans - p->state_from_plans) * 2u);
    }
    report[0] = (uint8_t)outcome;
    report[1] = closes;
    bytes_put_u16(report + 2, duration_ms);
    bytes_put_u16(report + 4, p->zeros.i_16ths);
    bytes_put_u16(report + 6, p->zeros.j_16ths);
    bytes_put_u16(report + 8, p->zeros.v_16ths);
    bytes_put_u16(report + 10, pairs);
    bytes_put_u16(report + 12, end_v);
    bytes_put_u16(report + 14, end_j);
    bytes_put_u32(report + 16, sum_v);
    bytes_put_u32(report + 20, sum_j);
    p->look_us = plan_us(conversion->plans, conversion->slot);
    p->look_waiting = true;
    if (!closes) {
        probe_off(p, BY_LOOK);
        return;
    }
    capture_start(&p->guard.capture);
    trip_levels_set(&p->levels, &p->limits, &p->zeros);
    guard_arm(&p->guard, &p->levels);
}

static void in_check(struct probe *p, const struct conversion *conversion)
{
    if (p->guard.armed)
        return;
    if (p->zeros_wait_for_look) {
        bool begins = conversion->slot == 0 && hal_path_now() == HAL_PATH_LOOK &&
                      conversion->plans == hal_path_since_plan();
        if (begins) {
            p->zeros_wait_for_look = false;
            look_start(&p->work.look, capture_lend(&p->guard.capture), &p->zeros, p->limits.look_over_j_counts);
            probe_enter(p, STATE_LOOK, BY_USER, plan_us(conversion->plans, 0));
        }
        return;
    }
    switch (check_conversion(&p->work.check, conversion)) {
    case CHECK_CURRENT:
        end_look(p, LOOK_CURRENT_WHILE_OFF, conversion);
        break;
    case CHECK_VOLTS_STAY:
        end_look(p, LOOK_VOLTS_STAY, conversion);
        break;
    case CHECK_DONE:
        check_zeros(&p->work.check, &p->zeros);
        p->zeros_taken = true;
        if (p->inputs & INPUT_SUPPLY_REVERSED) {
            end_look(p, LOOK_REVERSED, conversion);
        } else if (p->look_parameters.skip) {
            end_look(p, LOOK_SKIPPED, conversion);
        } else {
            p->zeros_wait_for_look = true;
            hal_path_at_boundary(HAL_PATH_LOOK);
        }
        break;
    default:
        break;
    }
}

/* "Off" is believed only when nothing flows: looked at for a second after each opening. */
static void after_opening(struct probe *p, const struct conversion *conversion)
{
    uint32_t plans = conversion->plans - p->opened_plans;
    if (before(conversion->plans, p->opened_plans))
        return;
    if (p->state == STATE_LOOK || p->state == STATE_ON || plans > WATCH_AFTER_OPEN_PLANS) {
        p->opened_lately = false;
        return;
    }
    if (conversion_channel(conversion) != CHANNEL_J || plans < SETTLE_AFTER_OPEN_PLANS)
        return;
    bool flows = conversion->counts >= p->rest_j_counts + OPEN_CURRENT_COUNTS;
    p->current_in_row = flows ? (uint8_t)(p->current_in_row + 1) : 0;
    if (p->current_in_row >= OPEN_CURRENT_IN_ROW) {
        p->self_test |= SELF_TEST_SWITCH_PATH;
        p->opened_lately = false;
        p->status_waiting = true;
    }
}

/* For check, look and the time after an opening. */
static CORE_RARE void listen_to(struct probe *p, const struct conversion *conversion)
{
    if (p->state == STATE_CHECK) {
        if (!before(conversion->plans, p->state_from_plans))
            in_check(p, conversion);
    } else if (p->state == STATE_LOOK && !p->guard.armed) {
        if (look_conversion(&p->work.look, &p->look_parameters, &p->zeros, conversion))
            end_look(p,
                     look_outcome(&p->work.look, &p->look_parameters, &p->zeros,
                                  (p->inputs & INPUT_SUPPLY_REVERSED) != 0),
                     conversion);
    }
    if (p->opened_lately)
        after_opening(p, conversion);
}

static void take_conversions(struct probe *p)
{
    struct queue *queue = &p->guard.queue;
    uint8_t waiting = queue_waiting(queue);
    if (waiting > queue->highest)
        queue->highest = waiting;
    if (waiting > 0)
        p->converts = true;
    /* None of the three begins within a round. */
    bool listens = p->state == STATE_CHECK || p->state == STATE_LOOK || p->opened_lately;
    for (uint8_t left = CONVERSIONS_A_ROUND; left > 0; left--) {
        if (p->stream.full && !stream_ready(&p->stream, &p->out))
            return;
        if (!queue_take(queue))
            return;
        stream_conversion(&p->stream, &p->out, &queue->taken);
        if (listens)
            listen_to(p, &queue->taken);
    }
}

static bool take_trip(struct probe *p)
{
    if (p->guard.on && p->state != STATE_ON)
        closed(p);
    if (!p->guard.claimed)
        return false;
    tripped(p);
    return true;
}

/* ---- every 2 ms ---- */

static void pressed(struct probe *p, enum press_source source, enum press_kind kind)
{
    if (kind == PRESS_NOTHING)
        return;
    report_notice(p, MESSAGE_PRESS, (uint8_t)source, (uint8_t)kind, probe_now_us());
    if (source == PRESS_BUTTON && kind == PRESS_DOWN)
        probe_off(p, BY_BUTTON);
    else if (source == PRESS_PEDAL && kind == PRESS_HELD)
        probe_off(p, BY_PEDAL);
}

static void look_at_inputs(struct probe *p, uint32_t now_ms)
{
    p->inputs = hal_inputs();
    pressed(p, PRESS_BUTTON, press_look(&p->button, (p->inputs & INPUT_BUTTON) != 0, now_ms));
    pressed(p, PRESS_PEDAL, press_look(&p->pedal, (p->inputs & INPUT_PEDAL) != 0, now_ms));
    if (p->inputs & INPUT_CHASSIS_CLIP) {
        p->clip_off_looks = 0;
    } else if (p->clip_off_looks < CLIP_OFF_LOOKS) {
        p->clip_off_looks++;
    } else {
        lost(p, TRIP_CHASSIS_CLIP, BY_CHASSIS_CLIP, p->inputs);
    }
}

static void listen_for_host(struct probe *p, uint32_t now_us, uint32_t now_ms)
{
    uint32_t silent_us = now_us - p->host_heard_us;
    /* The difference wraps after 71 minutes of silence, long after this has opened the switch. */
    if (silent_us >= p->limits.silence_ms * 1000uL)
        lost(p, TRIP_HOST_SILENCE, BY_HOST_SILENCE, 0);
    if (silent_us >= HOST_GONE_US && p->host_there) {
        p->host_there = false;
        p->speed_since_ms = now_ms;
    }
    bool searching = !p->host_there && now_ms >= HOST_GONE_US / 1000;
    if (searching && now_ms - p->speed_since_ms >= SPEED_TRY_MS) {
        p->speed_since_ms = now_ms;
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

static void send_trip_again(struct probe *p, uint32_t now_us)
{
    uint32_t after_us = p->trip_sends == 2 ? 50000 : 200000;
    if (p->trip_sends > 0 && now_us - p->tripped_us >= after_us) {
        p->trip_sends--;
        p->trip_waiting = true;
    }
}

static void every_plan(struct probe *p)
{
    struct instant now = hal_now();
    uint32_t now_us = instant_us(&now);
    uint32_t now_ms = instant_ms(&now);
    look_at_inputs(p, now_ms);
    listen_for_host(p, now_us, now_ms);
    send_trip_again(p, now_us);
    beeper_run(&p->beeper, now_ms);
    p->stalled_plans = p->converts || p->stream.full ? 0 : (uint8_t)(p->stalled_plans + 1);
    p->converts = false;
    if (p->stalled_plans >= STALLED_PLANS) {
        p->stalled_plans = 0;
        p->self_test |= SELF_TEST_CONVERTER;
        lost(p, TRIP_SELF_TEST, BY_LOOK, probe_self_test_bits(p));
    }
    if (p->host_there && now.plans - p->status_plans >= 100) {
        p->status_plans = now.plans;
        p->busy_percent = hal_busy_percent();
        p->status_waiting = true;
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
    bool answer = take_trip(p);
    take_conversions(p);
    answer = command_receive(p) || answer;
    uint8_t plan = hal_plan_low();
    if (plan != p->looked_plan) {
        p->looked_plan = plan;
        every_plan(p);
        answer = true;
    }
    if (!answer)
        return;
    take_trip(p);
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
