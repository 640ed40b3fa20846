#include "fed.h"

#include <string.h>

enum { I = CHANNEL_I, J = CHANNEL_J, V = CHANNEL_V, R1 = CHANNEL_R1, R2 = CHANNEL_R2, R3 = CHANNEL_R3, H = CHANNEL_H,
       M = CHANNEL_M };

const uint8_t FED_PLAN[PLAN_SLOTS] = {I, H, M, V, I, H, M, R1, I, H, M, R2, I, H, M, R3,
                                      I, H, M, J, I, H, M, R1, I, H, M, R2, I, H, M, R3};

enum { READING_CONVERSIONS = 160, READING_BYTES = 84, LOCK_SLACK_CYCLES = 250 };

void fed_restart(struct fed *fed)
{
    fed->locked = false;
    fed->recent_count = 0;
    fed->next = 0;
    memset(fed->ring, 0, sizeof fed->ring);
}

static void write_record(struct fed *fed, bool started, uint8_t channel, uint16_t counts)
{
    if (fed->file == NULL)
        return;
    uint16_t packed = started ? (uint16_t)(0x8000 | channel << 10 | counts) : 0;
    uint8_t bytes[2] = {(uint8_t)packed, (uint8_t)(packed >> 8)};
    fwrite(bytes, 1, sizeof bytes, fed->file);
}

static void number(struct fed *fed, uint64_t cycle, uint8_t channel, uint16_t counts)
{
    uint64_t from_first = cycle - fed->first_cycle + CYCLES_PER_CONVERSION / 2;
    uint64_t n = from_first / CYCLES_PER_CONVERSION;
    uint64_t off = from_first % CYCLES_PER_CONVERSION;
    uint64_t jitter = off > CYCLES_PER_CONVERSION / 2 ? off - CYCLES_PER_CONVERSION / 2 : CYCLES_PER_CONVERSION / 2 - off;
    if (jitter > fed->longest_jitter_cycles)
        fed->longest_jitter_cycles = jitter;
    for (; fed->next < n; fed->next++) {
        fed->missed_starts++;
        write_record(fed, false, 0, 0);
    }
    if (n < fed->next)
        return; /* a second start within one tick: counted by the firmware as a late start, not a conversion */
    fed->next = n + 1;
    fed->started++;
    if (channel != FED_PLAN[n % PLAN_SLOTS])
        fed->off_plan++;
    fed->ring[n % FED_RING] = (struct fed_entry){n, counts, channel, true};
    write_record(fed, true, channel, counts);
}

/* The plan has one V, so 32 regular starts that fit it name the first of them slot 0. */
static bool fits_plan(const struct fed *fed)
{
    for (size_t i = 0; i < PLAN_SLOTS; i++) {
        if (fed->recent[i].channel != FED_PLAN[i])
            return false;
        uint64_t step = i == 0 ? CYCLES_PER_CONVERSION : fed->recent[i].cycle - fed->recent[i - 1].cycle;
        if (step + LOCK_SLACK_CYCLES < CYCLES_PER_CONVERSION || step > CYCLES_PER_CONVERSION + LOCK_SLACK_CYCLES)
            return false;
    }
    return true;
}

void fed_conversion(struct fed *fed, uint64_t cycle, uint8_t channel, uint16_t counts)
{
    if (fed->locked) {
        number(fed, cycle, channel, counts);
        return;
    }
    if (fed->recent_count == PLAN_SLOTS) {
        memmove(&fed->recent[0], &fed->recent[1], sizeof fed->recent - sizeof fed->recent[0]);
        fed->recent_count--;
    }
    fed->recent[fed->recent_count].cycle = cycle;
    fed->recent[fed->recent_count].channel = channel;
    fed->recent[fed->recent_count].counts = counts;
    fed->recent_count++;
    if (fed->recent_count < PLAN_SLOTS || !fits_plan(fed))
        return;
    fed->locked = true;
    fed->first_cycle = fed->recent[0].cycle;
    for (size_t i = 0; i < PLAN_SLOTS; i++)
        number(fed, fed->recent[i].cycle, fed->recent[i].channel, fed->recent[i].counts);
}

/* Number of the conversion that starts at tick floor(62.5 n), unwrapped to the one nearest before now. */
static uint64_t number_at(const struct fed *fed, uint32_t tick)
{
    uint64_t now_us = fed->next * 125 / 2;
    uint64_t unwrapped = (now_us & ~(uint64_t)UINT32_MAX) | tick;
    if (unwrapped > now_us + 1000000 && unwrapped > UINT32_MAX)
        unwrapped -= (uint64_t)UINT32_MAX + 1;
    return (2 * unwrapped + 1) / 125;
}

static const struct fed_entry *entry_of(const struct fed *fed, uint64_t n)
{
    const struct fed_entry *entry = &fed->ring[n % FED_RING];
    return entry->started && entry->number == n ? entry : NULL;
}

static uint16_t unpack(const uint8_t *packed, size_t index)
{
    size_t bit = index * 10;
    return (uint16_t)((packed[bit / 8] | packed[bit / 8 + 1] << 8) >> bit % 8 & 0x3FF);
}

static void compare_raw(struct fed *fed, const struct wire_frame *frame)
{
    const uint8_t *payload = wire_payload(frame);
    if (wire_payload_length(frame) < 4)
        return;
    uint8_t first_slot = payload[0], count = payload[1];
    if (wire_payload_length(frame) != 4u + (10u * count + 7) / 8)
        return;
    uint64_t first = number_at(fed, wire_u32(frame->bytes + 4));
    for (size_t i = 0; i < count; i++) {
        fed->compared++;
        const struct fed_entry *entry = entry_of(fed, first + i);
        if (entry == NULL) {
            fed->not_found++;
            continue;
        }
        if (entry->channel != FED_PLAN[(first_slot + i) % PLAN_SLOTS])
            fed->mislabelled++;
        if (entry->counts != unpack(payload + 4, i))
            fed->wrong++;
    }
}

struct sums {
    uint32_t sum, lowest, highest, squares;
};

static bool sum_up(const struct fed *fed, uint64_t first, struct sums sums[CHANNELS])
{
    for (int c = 0; c < CHANNELS; c++)
        sums[c] = (struct sums){0, UINT16_MAX, 0, 0};
    for (uint64_t n = first; n < first + READING_CONVERSIONS; n++) {
        const struct fed_entry *entry = entry_of(fed, n);
        if (entry == NULL)
            return false;
        struct sums *of = &sums[FED_PLAN[n % PLAN_SLOTS]];
        of->sum += entry->counts;
        of->squares += (uint32_t)entry->counts * entry->counts;
        of->lowest = entry->counts < of->lowest ? entry->counts : of->lowest;
        of->highest = entry->counts > of->highest ? entry->counts : of->highest;
    }
    return true;
}

static void compare_reading(struct fed *fed, const struct wire_frame *frame)
{
    const uint8_t *payload = wire_payload(frame);
    if (wire_payload_length(frame) != READING_BYTES || (wire_u16(payload + 2) & 1) != 0)
        return; /* a reading with a lost conversion is a gap, and says so */
    struct sums sums[CHANNELS];
    fed->readings_compared++;
    bool right = sum_up(fed, number_at(fed, wire_u32(frame->bytes + 4)), sums);
    for (int c = 0; right && c < CHANNELS; c++) {
        const uint8_t *sent = payload + 4 + 10 * c;
        right = sums[c].sum == wire_u16(sent) && sums[c].lowest == wire_u16(sent + 2)
                && sums[c].highest == wire_u16(sent + 4) && sums[c].squares == wire_u32(sent + 6);
    }
    if (!right)
        fed->readings_wrong++;
}

void fed_compare(struct fed *fed, const struct wire_frame *frame)
{
    if (!fed->locked)
        return;
    if (wire_type(frame) == WIRE_RAW)
        compare_raw(fed, frame);
    else if (wire_type(frame) == WIRE_READING)
        compare_reading(fed, frame);
}
