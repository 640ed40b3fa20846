#include "fed.h"

#include <stdlib.h>
#include <string.h>

#include "check.h"

enum { FIRST_CYCLE = 5000123, RUN = 400 };

/* A value that differs between neighbours and channels. */
static uint16_t value_of(unsigned n)
{
    return (uint16_t)(n * 37 % 1024);
}

/* A run of the plan from number 0 on; skip is a number whose start is left out. */
static struct fed *fed_run(unsigned skip)
{
    struct fed *fed = calloc(1, sizeof *fed);
    fed_conversion(fed, FIRST_CYCLE - 90000, CHANNEL_M, 3); /* a dummy conversion and a self-test before the plan */
    fed_conversion(fed, FIRST_CYCLE - 70000, CHANNEL_I, 4);
    for (unsigned n = 0; n < RUN; n++)
        if (n != skip)
            fed_conversion(fed, FIRST_CYCLE + n * 1000u + n % 7 * 10, FED_PLAN[n % PLAN_SLOTS], value_of(n));
    return fed;
}

static void raw_frame(struct wire_frame *frame, unsigned first, unsigned count)
{
    memset(frame, 0, sizeof *frame);
    uint32_t tick = first * 125 / 2;
    uint8_t head[12] = {WIRE_VERSION, WIRE_RAW, 0, 0, (uint8_t)tick, (uint8_t)(tick >> 8), (uint8_t)(tick >> 16), 0,
                        (uint8_t)(first % PLAN_SLOTS), (uint8_t)count};
    memcpy(frame->bytes, head, sizeof head);
    for (unsigned i = 0; i < count * 10; i++)
        if (value_of(first + i / 10) >> i % 10 & 1)
            frame->bytes[12 + i / 8] |= (uint8_t)(1 << i % 8);
    frame->length = 12 + (count * 10 + 7) / 8 + WIRE_CRC_BYTES;
}

static void finds_every_conversion_right(void)
{
    struct fed *fed = fed_run(RUN);
    struct wire_frame frame;
    CHECK(fed->locked && fed->started == RUN && fed->missed_starts == 0 && fed->off_plan == 0);
    CHECK(fed->longest_jitter_cycles == 60);
    raw_frame(&frame, 33, 128);
    fed_compare(fed, &frame);
    raw_frame(&frame, 161, 5);
    fed_compare(fed, &frame);
    CHECK(fed->compared == 133 && fed->wrong == 0 && fed->mislabelled == 0 && fed->not_found == 0);
    free(fed);
}

static void notices_a_wrong_value_a_wrong_slot_and_a_lost_start(void)
{
    struct fed *fed = fed_run(100);
    struct wire_frame frame;
    CHECK(fed->missed_starts == 1 && fed->started == RUN - 1);
    raw_frame(&frame, 96, 8);
    fed_compare(fed, &frame);
    CHECK(fed->not_found == 1 && fed->wrong == 0);
    raw_frame(&frame, 64, 8);
    frame.bytes[12] ^= 1;
    fed_compare(fed, &frame);
    CHECK(fed->wrong == 1 && fed->mislabelled == 0);
    raw_frame(&frame, 64, 1);
    frame.bytes[8] = 1;
    fed_compare(fed, &frame);
    CHECK(fed->wrong == 1 && fed->mislabelled == 1);
    free(fed);
}

static void sums_readings(void)
{
    struct fed *fed = fed_run(RUN);
    struct wire_frame frame = {.bytes = {WIRE_VERSION, WIRE_READING, 0, 0, 0x10, 0x27}, .length = 8 + 84 + 2};
    for (int c = 0; c < CHANNELS; c++) {
        uint32_t sum = 0, low = 1023, high = 0, squares = 0;
        for (unsigned n = 160; n < 320; n++) {
            uint32_t v = value_of(n);
            if (FED_PLAN[n % PLAN_SLOTS] != c)
                continue;
            sum += v;
            squares += v * v;
            low = v < low ? v : low;
            high = v > high ? v : high;
        }
        uint8_t *place = frame.bytes + 8 + 4 + 10 * c;
        const uint32_t fields[3] = {sum, low, high};
        for (int i = 0; i < 3; i++) {
            place[2 * i] = (uint8_t)fields[i];
            place[2 * i + 1] = (uint8_t)(fields[i] >> 8);
        }
        for (int i = 0; i < 4; i++)
            place[6 + i] = (uint8_t)(squares >> 8 * i);
    }
    fed_compare(fed, &frame);
    CHECK(fed->readings_compared == 1 && fed->readings_wrong == 0);
    frame.bytes[8 + 4 + 6]++;
    fed_compare(fed, &frame);
    CHECK(fed->readings_wrong == 1);
    free(fed);
}

static void counts_a_conversion_off_the_plan(void)
{
    struct fed *fed = fed_run(RUN);
    fed_conversion(fed, FIRST_CYCLE + RUN * 1000u, CHANNEL_V, 0); /* 400 mod 32 = 16: the plan says I */
    CHECK(fed->off_plan == 1);
    fed_restart(fed);
    CHECK(!fed->locked);
    free(fed);
}

void fed_tests(void)
{
    finds_every_conversion_right();
    notices_a_wrong_value_a_wrong_slot_and_a_lost_start();
    sums_readings();
    counts_a_conversion_off_the_plan();
}
