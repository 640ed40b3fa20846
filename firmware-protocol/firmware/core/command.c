#include "command.h"

#include <string.h>

#include "bytes.h"
#include "crc16.h"
#include "report.h"

/*
 * A round is 0.5 ms, in which the line brings 25 bytes. Whoever sends without a pause must not take the time of the
 * stream: 9 bytes a round are taken for good, and 160 at a stretch, more than any two commands.
 */
enum { BYTES_A_ROUND = 9, BYTES_AT_A_STRETCH = 160, ROOM_FOR_ANSWER = WIRE_OUT_BYTES(CALIBRATION_BYTES) + WIRE_OUT_BYTES(ACCEPTED_BYTES) };

struct answer {
    enum refusal refusal;
    uint16_t detail;
};

static const struct answer ACCEPTED = {REFUSAL_NONE, 0};

static struct answer refuse(enum refusal refusal, uint16_t detail)
{
    struct answer answer = {refusal, detail};
    return answer;
}

/* What stands against arming, in this order. */
static struct answer armable(const struct probe *p, bool restore, uint16_t number)
{
    uint16_t latched = latch_number(&p->latch);
    if (p->state == STATE_CHECK || p->state == STATE_LOOK || p->calibration_writing)
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
    if (p->inputs & (INPUT_BUTTON | INPUT_PEDAL))
        return refuse(REFUSAL_BUTTON_DOWN, p->inputs);
    if (p->calibration.state == STORE_DAMAGED)
        return refuse(REFUSAL_CALIBRATION_DAMAGED, 0);
    uint16_t bits = probe_self_test_bits(p);
    if (bits & (uint16_t)~SELF_TEST_WATCHDOG)
        return refuse(REFUSAL_SELF_TEST, bits);
    return ACCEPTED;
}

static struct answer arm(struct probe *p, const uint8_t *payload, bool close, bool restore, uint16_t number)
{
    struct look_parameters parameters;
    uint8_t field;
    enum refusal refusal = look_parameters_read(payload, &parameters, &field);
    if (refusal != REFUSAL_NONE)
        return refuse(refusal, field);
    struct answer answer = armable(p, restore, number);
    if (answer.refusal == REFUSAL_NONE)
        probe_arm(p, &parameters, close);
    return answer;
}

static struct answer take_limits(struct probe *p, const uint8_t *payload)
{
    struct limits limits;
    uint8_t field;
    enum refusal refusal = limits_read(payload, &limits, &field);
    if (refusal != REFUSAL_NONE)
        return refuse(refusal, field);
    if (p->state == STATE_CHECK)
        return refuse(REFUSAL_WRONG_STATE, p->state);
    if (p->look_waiting && (p->guard.armed || p->guard.on))
        return refuse(REFUSAL_BUSY, p->state); /* its place is needed, and it is about to be sent */
    bool free_to_set = p->state == STATE_OFF || p->state == STATE_TRIPPED;
    uint8_t wider = free_to_set ? 0 : limits_wider(&p->limits, &limits);
    if (wider != 0)
        return refuse(REFUSAL_LIMIT_GETS_WIDER, wider);
    probe_set_limits(p, &limits);
    return ACCEPTED;
}

static struct answer take_off(struct probe *p, uint8_t by)
{
    if (by < BY_USER || by > BY_SIGNAL)
        return refuse(REFUSAL_BAD_VALUE, 1);
    probe_off(p, (enum switch_by)by);
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
    probe_clear_trip(p);
    return ACCEPTED;
}

static struct answer sound(struct probe *p, uint8_t pattern)
{
    if (pattern > SOUND_TRIP)
        return refuse(REFUSAL_BAD_VALUE, 1);
    beeper_sound(&p->beeper, (enum sound_pattern)pattern, probe_now_ms());
    return ACCEPTED;
}

static void answer_frame(struct probe *p, uint8_t type, uint16_t sequence, struct answer answer)
{
    if (answer.refusal == REFUSAL_NONE)
        report_accepted(p, type, sequence);
    else
        report_refused(p, type, sequence, answer.refusal, answer.detail);
}

/* ---- frames that are answered otherwise, or later ---- */

static void take_hello(struct probe *p, const struct wire_frame *frame)
{
    uint8_t speed = frame->payload[0];
    if (speed > HAL_SPEED_250K) {
        report_refused(p, frame->type, frame->sequence, REFUSAL_BAD_VALUE, 1);
        return;
    }
    p->speed_wanted = speed;
    if (speed == HAL_SPEED_250K && p->stream.kind == STREAM_RAW)
        stream_choose(&p->stream, STREAM_NONE);
    p->hello_waiting = true;
}

static void take_stream(struct probe *p, const struct wire_frame *frame)
{
    uint8_t kind = frame->payload[0];
    struct answer answer = ACCEPTED;
    if (kind > STREAM_REDUCED)
        answer = refuse(REFUSAL_BAD_VALUE, 1);
    else if (kind == STREAM_RAW && p->speed_wanted == HAL_SPEED_250K)
        answer = refuse(REFUSAL_TOO_FAST_FOR_LINE, p->speed_wanted);
    if (answer.refusal != REFUSAL_NONE) {
        answer_frame(p, frame->type, frame->sequence, answer);
        return;
    }
    p->stream_wanted = kind;
    p->stream_sequence = frame->sequence;
    p->stream_wanted_waiting = true;
}

static void take_calibration(struct probe *p, const struct wire_frame *frame)
{
    uint8_t field;
    struct answer answer = ACCEPTED;
    if (calibration_check(frame->payload, &field) != REFUSAL_NONE)
        answer = refuse(REFUSAL_BAD_VALUE, field);
    else if (p->calibration_writing)
        answer = refuse(REFUSAL_BUSY, p->state);
    else if (p->state != STATE_OFF)
        answer = refuse(REFUSAL_WRONG_STATE, p->state);
    if (answer.refusal != REFUSAL_NONE) {
        answer_frame(p, frame->type, frame->sequence, answer);
        return;
    }
    uint8_t *record = (uint8_t *)capture_lend(&p->guard.capture);
    memcpy(record, frame->payload, CALIBRATION_BYTES);
    bytes_put_u16(record + CALIBRATION_BYTES, crc16_of(record, CALIBRATION_BYTES));
    p->calibration_sequence = frame->sequence;
    p->calibration_writing = true;
    store_write(&p->calibration_job, STORE_CALIBRATION_AT, record, CALIBRATION_RECORD_BYTES);
}

void command_calibration_written(struct probe *p)
{
    if (wire_out_free(&p->out) < ROOM_FOR_ANSWER)
        return;
    p->calibration_writing = false;
    calibration_load(&p->calibration);
    p->rest_j_counts = calibration_rest_counts(&p->calibration, CHANNEL_J);
    if (p->calibration.state == STORE_VALID) {
        report_accepted(p, HOST_CALIBRATION_WRITE, p->calibration_sequence);
        report_calibration(p);
    } else {
        report_refused(p, HOST_CALIBRATION_WRITE, p->calibration_sequence, REFUSAL_EEPROM, 0);
    }
}

static void take_self_test(struct probe *p, const struct wire_frame *frame)
{
    if (p->state != STATE_OFF)
        report_refused(p, frame->type, frame->sequence, REFUSAL_WRONG_STATE, p->state);
    else
        p->self_test_wanted = true;
}

void command_frame(struct probe *p, const struct wire_frame *frame)
{
    const uint8_t *payload = frame->payload;
    struct answer answer;
    p->host_there = true;
    p->host_heard_us = probe_now_us();
    switch (frame->type) {
    case HOST_HELLO:
        take_hello(p, frame);
        return;
    case HOST_STREAM:
        take_stream(p, frame);
        return;
    case HOST_HEARTBEAT:
        return;
    case HOST_STATUS_REQUEST:
        p->status_waiting = true;
        return;
    case HOST_CALIBRATION_READ:
        report_calibration(p);
        return;
    case HOST_CALIBRATION_WRITE:
        take_calibration(p, frame);
        return;
    case HOST_SELF_TEST:
        take_self_test(p, frame);
        return;
    case HOST_LIMITS:
        answer = take_limits(p, payload);
        break;
    case HOST_LOOK:
        answer = arm(p, payload, false, false, 0);
        break;
    case HOST_SWITCH_ON:
        answer = arm(p, payload, true, false, 0);
        break;
    case HOST_RESTORE:
        answer = arm(p, payload + 2, true, true, bytes_u16(payload));
        break;
    case HOST_SWITCH_OFF:
        answer = take_off(p, payload[0]);
        break;
    case HOST_SEND_AGAIN:
        answer = send_again(p, payload);
        break;
    case HOST_SOUND:
        answer = sound(p, payload[0]);
        break;
    case HOST_CLEAR_TRIP:
        answer = clear_trip(p, bytes_u16(payload));
        break;
    default:
        return; /* wire_in lets no other type through */
    }
    answer_frame(p, frame->type, frame->sequence, answer);
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
