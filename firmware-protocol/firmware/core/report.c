#include "report.h"

#include "bytes.h"
#include "compiler.h"

/* Captures and status wait for a nearly empty line, so that the stream never waits for them. */
enum { BACKGROUND_USED = 64 };

/* Of messages whose tick is the time at which they are made. */
static CORE_RARE bool begin_now(struct probe *p, enum probe_message type, uint8_t payload_bytes)
{
    return wire_out_begin(&p->out, (uint8_t)type, probe_now_us(), payload_bytes);
}

CORE_RARE void report_answer(struct probe *p, uint8_t type, uint16_t sequence, struct answer answer)
{
    bool refused = answer.refusal != REFUSAL_NONE;
    if (!begin_now(p, refused ? MESSAGE_REFUSED : MESSAGE_ACCEPTED, refused ? REFUSED_BYTES : ACCEPTED_BYTES))
        return;
    wire_out_u8(&p->out, type);
    wire_out_u16(&p->out, sequence);
    if (refused) {
        wire_out_u8(&p->out, (uint8_t)answer.refusal);
        wire_out_u16(&p->out, answer.detail);
    }
    wire_out_end(&p->out);
}

void report_calibration(struct probe *p)
{
    if (!begin_now(p, MESSAGE_CALIBRATION, CALIBRATION_BYTES))
        return;
    calibration_put(&p->calibration, 0, CALIBRATION_BYTES, &p->out);
    wire_out_end(&p->out);
}

static bool send_hello(struct probe *p)
{
    struct wire_out *out = &p->out;
    uint8_t fuses[3];
    hal_fuses(fuses);
    if (!begin_now(p, MESSAGE_HELLO, HELLO_BYTES))
        return false;
    wire_out_u16(out, PROBE_FIRMWARE);
    wire_out_u32(out, p->boot_id);
    wire_out_u8(out, hal_reset_cause());
    wire_out_u8(out, p->state);
    wire_out_u8(out, p->inputs);
    wire_out_u8(out, p->stream.kind);
    wire_out_u16(out, probe_self_test_bits(p));
    wire_out_u16(out, latch_number(&p->latch));
    wire_out_u8(out, latch_cause(&p->latch));
    wire_out_u8(out, p->calibration.state);
    calibration_put(&p->calibration, SCALE_AT, CHANNELS * SCALE_BYTES, out);
    calibration_put(&p->calibration, 0, SCALE_AT, out);
    wire_out_u32(out, PROBE_HARD_SHORT_MA);
    wire_out_u32(out, PROBE_LOOK_MOHM);
    wire_out_u16(out, p->limits.silence_ms);
    wire_out_u8(out, p->pedal_job);
    wire_out_bytes(out, fuses, sizeof fuses);
    wire_out_end(out);
    return true;
}

static bool send_look(struct probe *p)
{
    if (!wire_out_begin(&p->out, MESSAGE_LOOK, p->look_us, LOOK_BYTES))
        return false;
    wire_out_bytes(&p->out, (const uint8_t *)&p->work.look.result, LOOK_BYTES);
    wire_out_end(&p->out);
    return true;
}

static bool send_trip(struct probe *p)
{
    if (!wire_out_begin(&p->out, MESSAGE_TRIP, latch_tick(&p->latch), TRIP_BYTES))
        return false;
    wire_out_bytes(&p->out, p->latch.record, TRIP_BYTES);
    wire_out_end(&p->out);
    return true;
}

static void send_capture_block(struct probe *p)
{
    const struct capture *capture = &p->guard.capture;
    uint8_t block = p->capture_block;
    int16_t first = (int16_t)(1 - CAPTURE_BEFORE + block * CAPTURE_BLOCK);
    uint32_t tick = capture->decided_us + (uint32_t)(int32_t)first * CAPTURE_STEP_US;
    if (!wire_out_begin(&p->out, MESSAGE_CAPTURE, tick, CAPTURE_BYTES))
        return;
    wire_out_u16(&p->out, capture->number);
    wire_out_u16(&p->out, (uint16_t)first);
    wire_out_u8(&p->out, CAPTURE_BLOCK);
    wire_out_u8(&p->out, capture_missing(capture, block));
    wire_out_u16(&p->out, 0);
    for (uint8_t i = 0; i < CAPTURE_BLOCK; i++)
        wire_out_u16(&p->out, capture_at(capture, (int16_t)(first + i)));
    wire_out_end(&p->out);
    p->capture_block++;
}

static void send_status(struct probe *p)
{
    struct wire_out *out = &p->out;
    if (!begin_now(p, MESSAGE_STATUS, STATUS_BYTES))
        return;
    p->status_waiting = false;
    wire_out_u8(out, p->state);
    wire_out_u8(out, p->inputs);
    wire_out_u16(out, probe_self_test_bits(p));
    wire_out_u16(out, latch_number(&p->latch));
    wire_out_u16(out, p->guard.queue.lost);
    wire_out_u16(out, p->in.rejected);
    wire_out_u16(out, hal_uart_overruns());
    wire_out_u8(out, p->guard.queue.highest);
    wire_out_u8(out, p->busy_percent);
    wire_out_u16(out, hal_stack_free());
    wire_out_u16(out, hal_late_starts());
    wire_out_u16(out, p->zeros_taken ? p->zeros.i_16ths : UINT16_MAX);
    wire_out_u16(out, p->zeros_taken ? p->zeros.j_16ths : UINT16_MAX);
    wire_out_u16(out, p->zeros_taken ? p->zeros.v_16ths : UINT16_MAX);
    wire_out_u32(out, p->stream.sent);
    wire_out_u8(out, p->clips);
    wire_out_u8(out, p->pedal_job);
    wire_out_end(out);
}

/* The stream is changed here, so that what was taken before goes out first and the answer after it. */
static void change_stream(struct probe *p)
{
    if (!p->stream_wanted_waiting || !stream_flush(&p->stream, &p->out))
        return;
    if (wire_out_free(&p->out) < WIRE_OUT_BYTES(ACCEPTED_BYTES)) {
        stream_choose(&p->stream, STREAM_NONE); /* flushed already; nothing more goes in before the answer */
        return;
    }
    stream_choose(&p->stream, (enum stream_kind)p->stream_wanted);
    report_answer(p, HOST_STREAM, p->stream_sequence, ACCEPTED);
    p->stream_wanted_waiting = false;
}

void report_run(struct probe *p)
{
    if (p->hello_waiting && send_hello(p))
        p->hello_waiting = false;
    change_stream(p);
    notices_send(&p->notices, &p->out);
    if (p->look_waiting && send_look(p))
        p->look_waiting = false;
    if (p->trip_waiting && send_trip(p))
        p->trip_waiting = false;
    if (p->capture_expected && capture_whole(&p->guard.capture, latch_last_number(&p->latch))) {
        p->capture_expected = false;
        p->capture_block = 0;
    }
    if (wire_out_used(&p->out) > BACKGROUND_USED)
        return;
    if (p->status_waiting)
        send_status(p);
    else if (p->capture_block < CAPTURE_BLOCKS)
        send_capture_block(p);
}
