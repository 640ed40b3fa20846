/*
 * libFuzzer on everything that the host can reach. The first byte chooses a start; then records: kind % 4: 0 raw bytes
 * to the line, 1 a frame with the right checksum (type, length, payload), 2 time passes, 3 inputs and converter change.
 * Whatever comes, the switch is closed only in state on (or within the round in which it closes), and only once limits
 * were given.
 */
#include <stdlib.h>
#include <string.h>

#include "core/command.h"
#include "test/hal_fake.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static struct probe probe;

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

static void run(uint32_t conversions)
{
    for (; conversions > 0; conversions--) {
        fake_run(1);
        fake.from_probe_length = 0;
        watch();
    }
}

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
    fake_reset_all(&probe);
    run(64);
    size_t at = 0;
    while (at < size) {
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
            run(kind >> 2 < 48 ? 64u : 4000u);
        } else {
            at += take_change(data + at, left);
        }
    }
    return 0;
}
