/* Raw blocks and readings: the same integers whoever reduces, holes that move nothing. */
#include <stdlib.h>
#include <string.h>

#include "check.h"
#include "core/bytes.h"
#include "hal_fake.h"
#include "talk.h"

static struct probe probe;

static void raw_of(const uint8_t *packed, unsigned place, uint16_t *counts)
{
    *counts = 0;
    for (unsigned bit = 0; bit < 10; bit++) {
        unsigned at = place * 10 + bit;
        *counts = (uint16_t)(*counts | ((packed[at / 8] >> (at % 8)) & 1) << bit);
    }
}

static void random_counts(void)
{
    for (int channel = 0; channel < CHANNELS; channel++)
        fake.counts[channel] = (uint16_t)(rand() % 1024);
}

static uint16_t fed[32000];

/* Runs conversions with random counts and remembers each at its number. */
static void run_random(uint32_t conversions)
{
    while (conversions-- > 0) {
        random_counts();
        fake_run(1);
        fed[fake.plans * PLAN_SLOTS + fake.slot] = fake.counts[plan_channel[fake.slot]];
    }
}

static void raw_stream_is_what_was_fed(void)
{
    struct heard heard;
    const uint8_t raw = STREAM_RAW;
    const uint8_t none = STREAM_NONE;
    talk_fresh(&probe);
    fake_run(5); /* the stream begins with slot 0, not here */
    talk_forget();
    talk_send(HOST_STREAM, &raw, 1);
    run_random(3000);
    talk_send(HOST_STREAM, &none, 1);
    run_random(40);
    uint32_t next_us = 2000;
    uint32_t taken = 0;
    bool answered = false;
    while (talk_hear(&heard)) {
        if (heard.type == MESSAGE_ACCEPTED)
            answered = taken > 0;
        if (heard.type != MESSAGE_RAW)
            continue;
        CHECK(!answered);
        CHECK_IS(heard.tick_us, next_us);
        CHECK_IS(heard.payload[0], taken % 32);
        CHECK_IS(bytes_u16(heard.payload + 2), 0);
        CHECK_IS(heard.payload_bytes, 4 + (heard.payload[1] * 10 + 7) / 8);
        for (unsigned i = 0; i < heard.payload[1]; i++, taken++) {
            uint16_t counts;
            raw_of(heard.payload + 4, i, &counts);
            CHECK_IS(counts, fed[32 + taken]);
        }
        next_us = 2000 + taken * 125 / 2;
    }
    CHECK(answered);
    CHECK(taken > 2900 && taken % 128 != 0); /* the rest of a block came with the end */
    CHECK_IS(probe.stream.sent, taken);
}

static void readings_are_the_sums_of_what_was_fed(void)
{
    struct heard heard;
    const uint8_t reduced = STREAM_REDUCED;
    talk_fresh(&probe);
    fake_run(5);
    talk_forget();
    talk_send(HOST_STREAM, &reduced, 1);
    run_random(160 * 20);
    unsigned readings = 0;
    while (talk_hear_type(MESSAGE_READING, &heard)) {
        uint32_t first = 160 + 160 * readings++;
        CHECK_IS(heard.tick_us, first * 125 / 2);
        CHECK_IS(bytes_u16(heard.payload + 2), 0);
        for (unsigned channel = 0; channel < CHANNELS; channel++) {
            unsigned long sum = 0, lowest = 1023, highest = 0, squares = 0;
            for (uint32_t n = first; n < first + 160; n++) {
                if (plan_channel[n % 32] != channel)
                    continue;
                sum += fed[n];
                squares += (unsigned long)fed[n] * fed[n];
                lowest = fed[n] < lowest ? fed[n] : lowest;
                highest = fed[n] > highest ? fed[n] : highest;
            }
            const uint8_t *at = heard.payload + 4 + 10 * channel;
            CHECK_IS(bytes_u16(at), sum);
            CHECK_IS(bytes_u16(at + 2), lowest);
            CHECK_IS(bytes_u16(at + 4), highest);
            CHECK_IS(bytes_u32(at + 6), squares);
        }
    }
    CHECK(readings >= 18);
}

static void full_queue_leaves_a_hole_and_moves_nothing(void)
{
    struct heard heard;
    const uint8_t raw = STREAM_RAW;
    talk_fresh(&probe);
    talk_send(HOST_STREAM, &raw, 1);
    fake_run(320);
    for (int i = 0; i < 200; i++) /* the main loop is away for 12 ms */
        fake_conversion();
    fake_run(640);
    uint32_t next_us = 0;
    unsigned holes = 0;
    uint16_t dropped = 0;
    while (talk_hear_type(MESSAGE_RAW, &heard)) {
        if (next_us != 0 && heard.tick_us != next_us) {
            holes++;
            uint32_t missing = ((heard.tick_us - next_us) * 2 + 62) / 125;
            CHECK(missing > 100 && missing < 200);
            CHECK_IS(probe.guard.queue.lost, missing);
        }
        next_us = heard.tick_us + heard.payload[1] * 125u / 2u;
        CHECK_IS(heard.payload[0] * 125 / 2, heard.tick_us % 2000);
        dropped = bytes_u16(heard.payload + 2);
    }
    CHECK_IS(holes, 1);
    CHECK_IS(dropped, probe.guard.queue.lost);
}

static void reading_with_a_hole_is_flagged_or_left_out(void)
{
    struct heard heard;
    const uint8_t reduced = STREAM_REDUCED;
    talk_fresh(&probe);
    talk_send(HOST_STREAM, &reduced, 1);
    fake_run(160 * 3 + 40);
    fake.converter_stands = true;
    fake_run(3);
    fake.converter_stands = false;
    fake_run(160 * 3);
    unsigned flagged = 0;
    while (talk_hear_type(MESSAGE_READING, &heard)) {
        if (bytes_u16(heard.payload + 2) != 0) {
            flagged++;
            CHECK_IS(heard.tick_us, 30000);
        }
    }
    CHECK_IS(flagged, 1);
    CHECK_IS(probe.guard.queue.lost, 3);
}

static void a_line_that_stands_loses_no_order(void)
{
    const uint8_t raw = STREAM_RAW;
    struct heard heard;
    talk_fresh(&probe);
    talk_send(HOST_STREAM, &raw, 1);
    fake_run(320);
    fake.line_stands = true;
    fake_run(3200);
    fake.line_stands = false;
    fake_run(640);
    uint32_t last_us = 0;
    while (talk_hear_type(MESSAGE_RAW, &heard)) {
        CHECK(heard.tick_us > last_us || last_us == 0);
        last_us = heard.tick_us;
    }
    CHECK(probe.guard.queue.lost > 2000);
    CHECK(fake.watchdog_fed > 100);
}

void stream_tests(void)
{
    srand(1);
    raw_stream_is_what_was_fed();
    readings_are_the_sums_of_what_was_fed();
    full_queue_leaves_a_hole_and_moves_nothing();
    reading_with_a_hole_is_flagged_or_left_out();
    a_line_that_stands_loses_no_order();
}
