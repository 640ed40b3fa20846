/*
 * libFuzzer on everything that the host can reach. The first byte chooses a start: the probe in one of its
 * states, reached once by the ordinary way and copied from then on, so that an input need not last the 200 ms of the
 * zeros to get anywhere. Then records: kind % 4: 0 raw bytes to the line, 1 a frame with the right checksum (type,
 * length, payload), 2 time passes, 3 inputs and converter change. An input lasts 100 ms of the probe's time at most.
 * Whatever comes, the switch is closed only in state on (or within the round in which it closes), and only once limits
 * were given.
 */
#include <stddef.h>
#include <stdlib.h>
#include <string.h>

#include "core/command.h"
#include "test/hal_fake.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

enum { LONGEST_CONVERSIONS = 1600, ROUND = 8 /* conversions between two rounds of the chip's main loop */ };

static struct probe probe;
static uint32_t conversions_left;

static void must(bool right)
{
    if (!right)
        abort();
}

static void watch(void)
{
    must(fake.path != HAL_PATH_SWITCH || probe.limits_given);
    must(probe.state != STATE_ON || fake.path == HAL_PATH_SWITCH || probe.guard.claimed);
    must(fake.path != HAL_PATH_SWITCH || probe.state == STATE_ON || probe.guard.armed || probe.guard.on);
    must(probe.state != STATE_TRIPPED || latch_is_set(&probe.latch));
    must(probe.notices.count <= NOTICES && probe.capture_block <= CAPTURE_BLOCKS);
}

/* The main loop after each conversion. */
static void run(uint32_t conversions)
{
    for (; conversions > 0 && conversions_left > 0; conversions--, conversions_left--) {
        fake_run(1);
        fake.from_probe_length = 0;
        watch();
    }
}

/* The main loop at the chip's own pace. */
static void run_long(uint32_t conversions)
{
    for (; conversions >= ROUND && conversions_left >= ROUND; conversions -= ROUND, conversions_left -= ROUND) {
        for (int i = 0; i < ROUND - 1; i++)
            fake_conversion();
        fake_run(1);
        fake.from_probe_length = 0;
        watch();
    }
}

/* ---- starts ---- */

enum start { START_FRESH, START_LIMITED, START_CHECK, START_ZEROS, START_LOOK, START_ON, START_TRIPPED, STARTS };

/* All that a state is, but the bytes that were sent. */
enum { FAKE_KEPT = offsetof(struct fake, from_probe) };
static struct {
    struct probe probe;
    uint8_t fake[FAKE_KEPT];
} begun[STARTS];

static void give(uint8_t type, const uint8_t *payload)
{
    struct wire_frame frame = {payload, wire_in_payload_bytes(type), type, 1};
    command_frame(&probe, &frame);
}

static void let_pass(uint32_t conversions)
{
    conversions_left = conversions;
    run_long(conversions);
}

static void keep(enum start start)
{
    begun[start].probe = probe;
    memcpy(begun[start].fake, &fake, FAKE_KEPT);
}

/* 12 V behind 330 ohm: 205 counts of V with nothing flowing; the factors and edges are those of that supply. */
static void reach_all_starts(void)
{
    static const struct limits limits = {
        .inrush_ms = 20, .inrush_i_counts = 800, .running_i_counts = 400, .running_j_counts = 900, .peak_i_counts = 800,
        .mean_i_16ths = 6000, .mean_j_16ths = 9000, .confirm_i = 3, .confirm_j = 2, .confirm_rail = 3, .confirm_v = 3,
        .i2t_budget_counts2 = 10000000, .i2t_running_counts = 400, .rail_high_counts = {1000, 1000, 1000},
        .over_v_counts = 900, .silence_ms = 10000, .look_over_j_counts = 900};
    static const uint8_t look[LOOK_PARAMETER_BYTES] = {0, 0, 44, 1, 51, 2, 5, 0, 51, 0, 61, 0, 236, 0};
    static const uint8_t raw[] = {STREAM_RAW};
    uint8_t payload[LIMITS_BYTES] = {0};
    memcpy(payload, &limits, sizeof limits);
    fake_reset_all(&probe);
    fake.look_counts[CHANNEL_V] = 150;
    fake.look_counts[CHANNEL_J] = 25;
    fake.on_counts[CHANNEL_V] = 205;
    fake.on_counts[CHANNEL_I] = 80;
    let_pass(64);
    keep(START_FRESH);
    give(HOST_LIMITS, payload);
    give(HOST_STREAM, raw);
    let_pass(64);
    keep(START_LIMITED);
    give(HOST_SWITCH_ON, look);
    let_pass(64);
    must(probe.state == STATE_CHECK);
    keep(START_CHECK);
    let_pass(2800);
    must(probe.state == STATE_CHECK);
    keep(START_ZEROS);
    while (probe.state == STATE_CHECK)
        let_pass(64);
    let_pass(4000); /* of the 4800 it lasts */
    must(probe.state == STATE_LOOK);
    keep(START_LOOK);
    let_pass(1600);
    must(probe.state == STATE_ON);
    keep(START_ON);
    fake.on_counts[CHANNEL_I] = 900;
    let_pass(1600);
    must(probe.state == STATE_TRIPPED);
    keep(START_TRIPPED);
}

static void begin(uint8_t choice)
{
    static bool reached;
    if (!reached)
        reach_all_starts();
    reached = true;
    probe = begun[choice % STARTS].probe;
    memcpy(&fake, begun[choice % STARTS].fake, FAKE_KEPT);
    fake.from_probe_length = 0;
    conversions_left = LONGEST_CONVERSIONS;
}

/* ---- records ---- */

static size_t take_frame(const uint8_t *data, size_t size)
{
    struct wire_frame frame;
    static uint8_t payload[CALIBRATION_BYTES];
    if (size < 1)
        return size;
    frame.type = (uint8_t)(HOST_HELLO + data[0] % (HOST_TYPES_END - HOST_HELLO));
    frame.payload_bytes = wire_in_payload_bytes(frame.type);
    frame.sequence = (uint16_t)size;
    frame.payload = payload;
    if (size - 1 < frame.payload_bytes)
        return size;
    memset(payload, 0, sizeof payload);
    memcpy(payload, data + 1, frame.payload_bytes);
    if (!probe.stream_wanted_waiting && wire_out_used(&probe.out) == 0)
        command_frame(&probe, &frame);
    watch();
    return 1u + frame.payload_bytes;
}

static size_t take_change(const uint8_t *data, size_t size)
{
    if (size < 4)
        return size;
    fake.inputs = data[0] & 0x7F;
    uint8_t channel = data[1] % CHANNELS;
    uint16_t counts = (uint16_t)((data[2] | data[3] << 8) & COUNTS_HIGHEST);
    uint16_t *where = data[1] & 64 ? fake.on_counts : data[1] & 32 ? fake.look_counts : fake.counts;
    where[channel] = counts;
    fake.eeprom_worn = (data[1] & 128) != 0;
    return 4;
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    if (size == 0)
        return 0;
    begin(data[0]);
    size_t at = 1;
    while (at < size && conversions_left > 0) {
        uint8_t kind = data[at++];
        size_t left = size - at;
        if (kind % 4 == 0) {
            size_t length = left < (size_t)(kind >> 2) ? left : (size_t)(kind >> 2);
            fake_receive(data + at, length);
            at += length;
            run(16);
        } else if (kind % 4 == 1) {
            at += take_frame(data + at, left);
            run(8);
        } else if (kind % 4 == 2) {
            run_long(kind >> 2 < 48 ? 64u : 640u);
        } else {
            at += take_change(data + at, left);
        }
    }
    return 0;
}
