#include "command.h"

#include <string.h>

#include "arming.h"
#include "bytes.h"
#include "crc16.h"
#include "report.h"
#include "state.h"

/*
 * A round is 0.5 ms, in which the line brings 25 bytes. Whoever sends without a pause must not take the time of the
 * stream: 3 bytes a round are taken for good, and 240 at a stretch, more than any two commands.
 */
enum { BYTES_A_ROUND = 3, BYTES_AT_A_STRETCH = 240, ROOM_FOR_ANSWER = WIRE_OUT_BYTES(CALIBRATION_BYTES) + WIRE_OUT_BYTES(ACCEPTED_BYTES) };

/* For what is answered by another message, or later. */
enum { ANSWERED_OTHERWISE = 255 };
static const struct answer OTHERWISE = {(enum refusal)ANSWERED_OTHERWISE, 0};

static struct answer refuse(enum refusal refusal, uint16_t detail)
{
    struct answer answer = {refusal, detail};
    return answer;
}

/* What prevents arming, in this order. */
static struct answer armable(const struct probe *p, bool restore, uint16_t number)
{
    uint16_t latched = latch_number(&p->latch);
    if (p->state == STATE_CHECK || p->state == STATE_LOOK || p->step != ARMING_NONE || p->calibration_writing)
        return refuse(REFUSAL_BUSY, p->state);
    if (p->state == STATE_ON || (restore && p->state != STATE_TRIPPED))
        return refuse(REFUSAL_WRONG_STATE, p->state);
    if (!restore && p->state == STATE_TRIPPED)
        return refuse(REFUSAL_TRIP_LATCHED, latched);
    if (restore && number != latched)
        return refuse(REFUSAL_WRONG_NUMBER, latched);
    if (!p->limits_given)
        return refuse(REFUSAL_NO_LIMITS, 0);
    if (!(p->inputs & INPUT_CHASSIS_CLIP))
        return refuse(REFUSAL_NO_CHASSIS_CLIP, p->inputs);
    bool foot = (p->inputs & INPUT_PEDAL) != 0;
    bool hold_to_run = p->pedal_job == PEDAL_HOLD_TO_RUN;
    if (p->inputs & INPUT_BUTTON || (foot && !hold_to_run))
        return refuse(REFUSAL_BUTTON_DOWN, p->inputs);
    if (hold_to_run && !p->pedal.down)
        return refuse(REFUSAL_FOOT_NOT_DOWN, p->inputs);
    if (p->calibration.state == STORE_DAMAGED)
        return refuse(REFUSAL_CALIBRATION_DAMAGED, 0);
    uint16_t bits = probe_self_test_bits(p);
    if (bits & (uint16_t)~SELF_TEST_WATCHDOG)
        return refuse(REFUSAL_SELF_TEST, bits);
    return ACCEPTED;
}

static struct answer arm(struct probe *p, const uint8_t *payload, bool close, bool restore, uint16_t number)
{
    uint8_t field;
    enum refusal refusal = look_parameters_check(payload, &field);
    if (refusal != REFUSAL_NONE)
        return refuse(refusal, field);
    struct answer answer = armable(p, restore, number);
    if (answer.refusal == REFUSAL_NONE)
        probe_arm(p, payload, close);
    return answer;
}

static struct answer take_limits(struct probe *p, const uint8_t *payload)
{
    uint8_t field;
    enum refusal refusal = limits_check(payload, &field);
    if (refusal != REFUSAL_NONE)
        return refuse(refusal, field);
    if (p->state == STATE_CHECK)
        return refuse(REFUSAL_WRONG_STATE, p->state);
    if (p->look_waiting && (p->guard.armed || p->guard.on))
        return refuse(REFUSAL_BUSY, p->state); /* its place is needed, and it is about to be sent */
    bool free_to_set = p->state == STATE_OFF || p->state == STATE_TRIPPED;
    uint8_t wider = free_to_set ? 0 : limits_wider(&p->limits, payload);
    if (wider != 0)
        return refuse(REFUSAL_LIMIT_GETS_WIDER, wider);
    state_set_limits(p, payload);
    return ACCEPTED;
}

static struct answer take_off(struct probe *p, uint8_t by)
{
    if (by < BY_USER || by > BY_SIGNAL)
        return refuse(REFUSAL_BAD_VALUE, 1);
    state_off(p, (enum switch_by)by);
    return ACCEPTED;
}

static struct answer send_again(struct probe *p, const uint8_t *payload)
{
    uint16_t number = bytes_u16(payload + 1);
    if (payload[0] == MESSAGE_TRIP) {
        if (number == 0 || number != latch_last_number(&p->latch))
            return refuse(REFUSAL_NOTHING_THERE, number);
        p->trip_waiting = true;
        return ACCEPTED;
    }
    if (payload[0] != MESSAGE_CAPTURE)
        return refuse(REFUSAL_BAD_VALUE, 1);
    if (!capture_whole(&p->guard.capture, number))
        return refuse(REFUSAL_NOTHING_THERE, number);
    p->capture_block = 0;
    p->capture_expected = false;
    return ACCEPTED;
}

static struct answer clear_trip(struct probe *p, uint16_t number)
{
    if (p->state != STATE_TRIPPED)
        return refuse(REFUSAL_WRONG_STATE, p->state);
    if (number != latch_number(&p->latch))
        return refuse(REFUSAL_WRONG_NUMBER, latch_number(&p->latch));
    state_clear_trip(p);
    return ACCEPTED;
}

static struct answer sound(struct probe *p, uint8_t pattern)
{
    if (pattern > SOUND_TRIP)
        return refuse(REFUSAL_BAD_VALUE, 1);
    beeper_sound(&p->beeper, (enum sound_pattern)pattern, hal_plans());
    return ACCEPTED;
}

static struct answer take_pedal(struct probe *p, uint8_t job)
{
    if (job > PEDAL_MARK)
        return refuse(REFUSAL_BAD_VALUE, 1);
    if (p->state != STATE_OFF && p->state != STATE_TRIPPED)
        return refuse(REFUSAL_WRONG_STATE, p->state);
    p->pedal_job = job;
    return ACCEPTED;
}

/* ---- frames that are answered otherwise, or later ---- */

static struct answer take_clips(struct probe *p)
{
    if (p->state != STATE_OFF && p->state != STATE_TRIPPED)
        return refuse(REFUSAL_WRONG_STATE, p->state);
    if (p->look_waiting || p->guard.claimed)
        return refuse(REFUSAL_BUSY, p->state); /* its place is needed */
    if (p->step == ARMING_NONE)
        arming_read_back(p);
    return OTHERWISE;
}


static struct answer take_hello(struct probe *p, uint8_t speed)
{
    if (speed > HAL_SPEED_250K)
        return refuse(REFUSAL_BAD_VALUE, 1);
    p->speed_wanted = speed;
    if (speed == HAL_SPEED_250K && p->stream.kind == STREAM_RAW)
        stream_choose(&p->stream, STREAM_NONE);
    p->hello_waiting = true;
    return OTHERWISE;
}

static struct answer take_stream(struct probe *p, uint8_t kind, uint16_t sequence)
{
    if (kind > STREAM_REDUCED)
        return refuse(REFUSAL_BAD_VALUE, 1);
    if (kind == STREAM_RAW && p->speed_wanted == HAL_SPEED_250K)
        return refuse(REFUSAL_TOO_FAST_FOR_LINE, p->speed_wanted);
    p->stream_wanted = kind;
    p->stream_sequence = sequence;
    p->stream_wanted_waiting = true;
    return OTHERWISE;
}

static struct answer take_calibration(struct probe *p, const uint8_t *payload, uint16_t sequence)
{
    uint8_t field;
    if (calibration_check(payload, &field) != REFUSAL_NONE)
        return refuse(REFUSAL_BAD_VALUE, field);
    if (p->calibration_writing)
        return refuse(REFUSAL_BUSY, p->state);
    if (p->state != STATE_OFF)
        return refuse(REFUSAL_WRONG_STATE, p->state);
    uint8_t *record = (uint8_t *)capture_lend(&p->guard.capture);
    memcpy(record, payload, CALIBRATION_BYTES);
    bytes_put_u16(record + CALIBRATION_BYTES, crc16_of(record, CALIBRATION_BYTES));
    p->calibration_sequence = sequence;
    p->calibration_writing = true;
    store_write(&p->calibration_job, STORE_CALIBRATION_AT, record, CALIBRATION_RECORD_BYTES);
    return OTHERWISE;
}

void command_calibration_written(struct probe *p)
{
    if (wire_out_free(&p->out) < ROOM_FOR_ANSWER)
        return;
    p->calibration_writing = false;
    probe_load_calibration(p);
    bool holds = p->calibration.state == STORE_VALID;
    report_answer(p, HOST_CALIBRATION_WRITE, p->calibration_sequence, holds ? ACCEPTED : refuse(REFUSAL_EEPROM, 0));
    if (holds)
        report_calibration(p);
}

static struct answer take_self_test(struct probe *p)
{
    if (p->state != STATE_OFF)
        return refuse(REFUSAL_WRONG_STATE, p->state);
    p->self_test_wanted = true;
    return OTHERWISE;
}

static struct answer answer_to(struct probe *p, const struct wire_frame *frame)
{
    const uint8_t *payload = frame->payload;
    switch (frame->type) {
    case HOST_HELLO:
        return take_hello(p, payload[0]);
    case HOST_STREAM:
        return take_stream(p, payload[0], frame->sequence);
    case HOST_STATUS_REQUEST:
        p->status_waiting = true;
        return OTHERWISE;
    case HOST_CALIBRATION_READ:
        report_calibration(p);
        return OTHERWISE;
    case HOST_CALIBRATION_WRITE:
        return take_calibration(p, payload, frame->sequence);
    case HOST_SELF_TEST:
        return take_self_test(p);
    case HOST_LIMITS:
        return take_limits(p, payload);
    case HOST_LOOK:
        return arm(p, payload, false, false, 0);
    case HOST_SWITCH_ON:
        return arm(p, payload, true, false, 0);
    case HOST_RESTORE:
        return arm(p, payload + 2, true, true, bytes_u16(payload));
    case HOST_SWITCH_OFF:
        return take_off(p, payload[0]);
    case HOST_SEND_AGAIN:
        return send_again(p, payload);
    case HOST_SOUND:
        return sound(p, payload[0]);
    case HOST_CLEAR_TRIP:
        return clear_trip(p, bytes_u16(payload));
    case HOST_PEDAL:
        return take_pedal(p, payload[0]);
    case HOST_CLIPS:
        return take_clips(p);
    default: /* heartbeat; wire_in lets no other type through */
        return OTHERWISE;
    }
}

void command_frame(struct probe *p, const struct wire_frame *frame)
{
    p->host_there = true;
    p->silent_plans = 0;
    p->host_heard_us = probe_now_us();
    struct answer answer = answer_to(p, frame);
    if (answer.refusal != (enum refusal)ANSWERED_OTHERWISE)
        report_answer(p, frame->type, frame->sequence, answer);
}

bool command_receive(struct probe *p)
{
    struct wire_frame frame;
    uint8_t byte;
    bool any = false;
    if (p->bytes_allowed <= BYTES_AT_A_STRETCH - BYTES_A_ROUND)
        p->bytes_allowed = (uint8_t)(p->bytes_allowed + BYTES_A_ROUND);
    while (p->bytes_allowed > 0) {
        /* A block that waits for room goes before any answer, or answers could keep it waiting for ever. */
        if (p->stream.full || p->stream_wanted_waiting || wire_out_free(&p->out) < ROOM_FOR_ANSWER)
            return any;
        if (!hal_uart_take(&byte))
            return any;
        p->bytes_allowed--;
        if (wire_in_byte(&p->in, byte, &frame)) {
            command_frame(p, &frame);
            any = true;
        }
    }
    return any;
}
