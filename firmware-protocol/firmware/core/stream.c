#include "stream.h"

#include "compiler.h"

void stream_start(struct stream *stream, const uint16_t *dropped)
{
    stream->dropped = dropped;
}

void stream_choose(struct stream *stream, enum stream_kind kind)
{
    if (kind != STREAM_NONE)
        stream->sent = 0;
    stream->kind = (uint8_t)kind;
    stream->running = false;
    stream->full = false;
    stream->count = 0;
}

static CORE_RARE bool send_raw(struct stream *stream, struct wire_out *out)
{
    uint8_t packed = (uint8_t)((stream->count * 10u + 7u) / 8u);
    uint32_t tick = plan_us(stream->first_plans, stream->first_slot);
    if (!wire_out_begin(out, MESSAGE_RAW, tick, (uint8_t)(RAW_BYTES_BEFORE_PACKED + packed)))
        return false;
    wire_out_u8(out, stream->first_slot);
    wire_out_u8(out, stream->count);
    wire_out_u16(out, *stream->dropped);
    wire_out_bytes(out, stream->taken.packed, packed);
    wire_out_end(out);
    stream->sent += stream->count;
    stream->count = 0;
    return true;
}

static bool send_reading(struct stream *stream, struct wire_out *out)
{
    if (!wire_out_begin(out, MESSAGE_READING, plan_us(stream->first_plans, 0), READING_BYTES))
        return false;
    wire_out_u16(out, *stream->dropped);
    wire_out_u16(out, stream->hole ? READING_HOLE : 0);
    for (uint8_t c = 0; c < CHANNELS; c++) {
        const struct stream_channel *channel = &stream->taken.channel[c];
        wire_out_u16(out, channel->sum);
        wire_out_u16(out, channel->lowest);
        wire_out_u16(out, channel->highest);
        wire_out_u32(out, channel->squares);
    }
    wire_out_end(out);
    stream->sent += CONVERSIONS_PER_READING;
    return true;
}

bool stream_flush(struct stream *stream, struct wire_out *out)
{
    if (stream->kind == STREAM_RAW && stream->count > 0)
        return send_raw(stream, out);
    return stream->kind != STREAM_REDUCED || !stream->full || send_reading(stream, out);
}

bool stream_ready(struct stream *stream, struct wire_out *out)
{
    if (stream->full && stream_flush(stream, out)) {
        stream->full = false;
        stream->begun = false;
    }
    return !stream->full;
}

/* Four conversions fill five bytes. In bytes, for the chip's sake. */
static inline uint8_t low(uint16_t entry)
{
    return (uint8_t)entry;
}

static inline uint8_t high(uint16_t entry)
{
    return (uint8_t)(entry >> 8) & 3;
}

/* One alone, which is rare: its ten bits begin two bits further on in each of four. */
static CORE_RARE void pack(struct stream *stream, uint16_t counts)
{
    uint8_t place = stream->count & 3;
    uint8_t *at = stream->taken.packed + (stream->count >> 2) * 5u + place;
    counts = (uint16_t)(counts << (2 * place));
    at[0] = place == 0 ? low(counts) : (uint8_t)(at[0] | low(counts));
    at[1] = (uint8_t)(counts >> 8);
    stream->count++;
}

bool stream_wants_fours(const struct stream *stream)
{
    return stream->kind == STREAM_RAW && stream->running && (stream->count & 3) == 0;
}

CORE_RARE bool stream_raw_four(struct stream *stream, struct queue *queue)
{
    uint16_t four[4];
    uint8_t count = stream->count;
    if (!queue_take_four(queue, four))
        return false;
    if (count == 0) {
        stream->first_plans = queue->taken.plans;
        stream->first_slot = queue->taken.slot;
    }
    /* Never in a full block: the caller asks stream_ready() first. */
    // cppcheck-suppress pointerOutOfBoundsCond
    uint8_t *at = stream->taken.packed + (count >> 2) * 5u;
    at[0] = low(four[0]);
    at[1] = (uint8_t)(high(four[0]) | (uint8_t)(low(four[1]) << 2));
    at[2] = (uint8_t)((uint8_t)(low(four[1]) >> 6) | (uint8_t)(high(four[1]) << 2) | (uint8_t)(low(four[2]) << 4));
    at[3] = (uint8_t)((uint8_t)(low(four[2]) >> 4) | (uint8_t)(high(four[2]) << 4) | (uint8_t)(low(four[3]) << 6));
    at[4] = (uint8_t)((uint8_t)(low(four[3]) >> 2) | (uint8_t)(high(four[3]) << 6));
    count = (uint8_t)(count + 4);
    stream->count = count;
    if (count == RAW_BLOCK)
        stream->full = true;
    return true;
}

/* A hole ends the block before. Where that cannot be sent at once, what follows is let go until the next slot 0. */
static CORE_RARE bool hole_ends_block(struct stream *stream, struct wire_out *out)
{
    if (stream->count == 0 || send_raw(stream, out))
        return true;
    stream->full = true;
    stream->running = false;
    return false;
}

static void raw(struct stream *stream, struct wire_out *out, const struct conversion *conversion)
{
    if (!stream->running) {
        if (conversion->slot != 0)
            return;
        stream->running = true;
    }
    if (conversion->after_hole && !hole_ends_block(stream, out))
        return;
    if (stream->count == 0) {
        stream->first_plans = conversion->plans;
        stream->first_slot = conversion->slot;
    }
    pack(stream, conversion->counts);
    if (stream->count == RAW_BLOCK)
        stream->full = true;
}

static void begin_reading(struct stream *stream, uint32_t plans)
{
    stream->running = true;
    stream->begun = true;
    stream->hole = false;
    stream->first_plans = plans;
    for (uint8_t c = 0; c < CHANNELS; c++) {
        struct stream_channel *channel = &stream->taken.channel[c];
        channel->squares = 0;
        channel->sum = 0;
        channel->lowest = COUNTS_HIGHEST;
        channel->highest = 0;
    }
}

/* A hole that swallowed the end leaves a gap where the reading was; the next whole one starts again. */
static CORE_RARE void after_hole(struct stream *stream, uint32_t plans)
{
    stream->hole = true;
    stream->plan = (uint8_t)(plans % PLANS_PER_READING);
    if (plans - stream->first_plans >= PLANS_PER_READING)
        stream->begun = false;
}

static void reduced(struct stream *stream, const struct conversion *conversion)
{
    uint8_t slot = conversion->slot;
    if (slot == 0) /* the 32-bit remainder is slow on the chip, so it is taken once a plan */
        stream->plan = (uint8_t)(conversion->plans % PLANS_PER_READING);
    if (slot == 0 && stream->plan == 0)
        begin_reading(stream, conversion->plans);
    else if (conversion->after_hole)
        after_hole(stream, conversion->plans);
    if (!stream->begun)
        return;
    struct stream_channel *channel = &stream->taken.channel[conversion_channel(conversion)];
    CORE_NEAR(channel);
    uint16_t counts = conversion->counts;
    channel->sum = (uint16_t)(channel->sum + counts);
    channel->squares += (uint32_t)counts * counts;
    if (counts < channel->lowest)
        channel->lowest = counts;
    if (counts > channel->highest)
        channel->highest = counts;
    if (slot == PLAN_SLOTS - 1 && stream->plan == PLANS_PER_READING - 1)
        stream->full = true;
}

void stream_conversion(struct stream *stream, struct wire_out *out, const struct conversion *conversion)
{
    if (stream->kind == STREAM_RAW)
        raw(stream, out, conversion);
    else if (stream->kind == STREAM_REDUCED)
        reduced(stream, conversion);
}
