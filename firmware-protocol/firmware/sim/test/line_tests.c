#include <poll.h>
#include <string.h>
#include <fcntl.h>
#include <unistd.h>

#include "bridge.h"
#include "check.h"
#include "stream.h"

/* Frame in COBS with its zero byte; returns the length. Own and plain, so that the reader is not checked by itself. */
static size_t frame_of(uint8_t type, uint16_t sequence, const uint8_t *payload, size_t length, uint8_t *line)
{
    uint8_t bytes[WIRE_MAX_FRAME] = {WIRE_VERSION, type, (uint8_t)sequence, (uint8_t)(sequence >> 8)};
    size_t n = WIRE_HEADER_BYTES, out = 1, code = 0;
    memcpy(bytes + n, payload, length);
    n += length;
    uint16_t crc = wire_crc16(bytes, n);
    bytes[n++] = (uint8_t)crc;
    bytes[n++] = (uint8_t)(crc >> 8);
    line[0] = 1;
    for (size_t i = 0; i < n; i++) {
        if (bytes[i] != 0) {
            line[out++] = bytes[i];
            line[code]++;
        } else {
            code = out;
            line[out++] = 1;
        }
    }
    line[out++] = 0;
    return out;
}

static size_t receive(struct wire_receiver *receiver, const uint8_t *line, size_t length, struct wire_frame *frame)
{
    size_t frames = 0;
    for (size_t i = 0; i < length; i++)
        frames += wire_receive(receiver, line[i], frame);
    return frames;
}

static void reads_frames_and_skips_damaged_ones(void)
{
    struct wire_receiver receiver = {.length = 0};
    struct wire_frame frame;
    uint8_t line[300];
    const uint8_t payload[3] = {0, 7, 0};
    size_t length = frame_of(0x21, 0x1234, payload, sizeof payload, line);
    CHECK(receive(&receiver, line, length, &frame) == 1);
    CHECK(wire_type(&frame) == 0x21);
    CHECK(wire_payload_length(&frame) == 3);
    CHECK(wire_payload(&frame)[1] == 7);
    CHECK(wire_u16(frame.bytes + 2) == 0x1234);
    line[3] ^= 0x10;
    CHECK(receive(&receiver, line, length, &frame) == 0);
    line[3] ^= 0x10;
    uint8_t noise[400];
    memset(noise, 0x55, sizeof noise);
    CHECK(receive(&receiver, noise, sizeof noise, &frame) == 0);
    CHECK(receive(&receiver, line, length, &frame) == 0); /* lost with the noise in front of its end */
    CHECK(receive(&receiver, line, length, &frame) == 1);
}

static enum stream_change probe_says(struct stream *stream, uint8_t type, const uint8_t *payload, size_t length)
{
    struct wire_receiver receiver = {.length = 0};
    struct wire_frame frame;
    uint8_t line[300];
    CHECK(receive(&receiver, line, frame_of(type, 0, payload, length, line), &frame) == 1);
    return stream_probe_frame(stream, &frame);
}

static void host_asks(struct stream *stream, uint16_t sequence, uint8_t kind)
{
    uint8_t line[300];
    size_t length = frame_of(WIRE_STREAM, sequence, &kind, 1, line);
    for (size_t i = 0; i < length; i++)
        stream_host_byte(stream, line[i]);
}

static void counts_conversions_between_start_and_stop(void)
{
    struct stream stream = {.conversions_sent = 0};
    const uint8_t raw[4 + 160] = {0, 128}, tail[4 + 5] = {0, 4}, reading[84] = {0};
    const uint8_t accepted_9[3] = {WIRE_STREAM, 9, 0}, accepted_10[3] = {WIRE_STREAM, 10, 0};
    host_asks(&stream, 9, 1);
    CHECK(probe_says(&stream, WIRE_ACCEPTED, accepted_10, 3) == STREAM_SAME); /* of another frame */
    CHECK(probe_says(&stream, WIRE_ACCEPTED, accepted_9, 3) == STREAM_STARTED);
    CHECK(probe_says(&stream, WIRE_RAW, raw, sizeof raw) == STREAM_SAME);
    CHECK(probe_says(&stream, WIRE_RAW, tail, sizeof tail) == STREAM_SAME);
    CHECK(stream.conversions_sent == 132);
    host_asks(&stream, 10, 0);
    CHECK(probe_says(&stream, WIRE_ACCEPTED, accepted_10, 3) == STREAM_STOPPED);
    CHECK(stream.conversions_sent == 132);
    host_asks(&stream, 9, 2);
    CHECK(probe_says(&stream, WIRE_ACCEPTED, accepted_9, 3) == STREAM_STARTED);
    CHECK(probe_says(&stream, WIRE_READING, reading, sizeof reading) == STREAM_SAME);
    CHECK(stream.conversions_sent == 160);
}

static int open_client(const struct bridge *bridge)
{
    int client = open(bridge->path, O_RDWR | O_NOCTTY | O_NONBLOCK);
    CHECK(client >= 0);
    return client;
}

/* The terminal hands bytes over by itself; waits for them at most a second. */
static size_t client_reads(int client, uint8_t *bytes, size_t room)
{
    struct pollfd ready = {.fd = client, .events = POLLIN};
    poll(&ready, 1, 1000);
    ssize_t done = read(client, bytes, room);
    return done > 0 ? (size_t)done : 0;
}

static void passes_bytes_both_ways(void)
{
    struct bridge bridge;
    struct failure failure = {.text = ""};
    CHECK(bridge_open(&bridge, &BRIDGE_NO_FAULTS, &failure));
    int client = open_client(&bridge);
    uint8_t bytes[16], byte;
    for (int i = 0; i < 4; i++)
        bridge_put(&bridge, (uint8_t)(i == 3 ? 0x11 : i)); /* 0x11 would be eaten as flow control on a cooked line */
    bridge_move(&bridge, 0);
    CHECK(client_reads(client, bytes, sizeof bytes) == 4);
    CHECK(bytes[0] == 0 && bytes[1] == 1 && bytes[2] == 2 && bytes[3] == 0x11);
    CHECK(write(client, "\x03\r", 2) == 2);
    struct pollfd ready = {.fd = bridge.master, .events = POLLIN};
    poll(&ready, 1, 1000);
    bridge_move(&bridge, 1);
    CHECK(bridge_get(&bridge, &byte) && byte == 3);
    CHECK(bridge_get(&bridge, &byte) && byte == '\r');
    CHECK(!bridge_get(&bridge, &byte));
    close(client);
    bridge_close(&bridge);
}

static void turns_the_dials_for_a_bad_line(void)
{
    struct bridge bridge;
    struct failure failure = {.text = ""};
    struct bridge_dials dials = {.drop_byte_every = 3, .flip_bit_every = 4, .stall_from_ms = 10, .stall_to_ms = 20,
                                 .close_at_ms = 30};
    CHECK(bridge_open(&bridge, &dials, &failure));
    int client = open_client(&bridge);
    uint8_t bytes[16];
    for (int i = 0; i < 6; i++)
        bridge_put(&bridge, 0x40);
    bridge_move(&bridge, 10);
    CHECK(bridge.to_host.count == 4); /* stalled: kept */
    bridge_move(&bridge, 20);
    CHECK(client_reads(client, bytes, sizeof bytes) == 4);
    CHECK(bytes[0] == 0x40 && bytes[1] == 0x40 && bytes[2] == 0x42 && bytes[3] == 0x40); /* third and sixth gone */
    CHECK(bridge.bytes_lost == 0);
    bridge_move(&bridge, 30);
    CHECK(bridge.master < 0);
    CHECK(client_reads(client, bytes, sizeof bytes) == 0);
    bridge_put(&bridge, 1);
    CHECK(bridge.bytes_lost == 1);
    close(client);
}

static void counts_what_a_full_queue_loses(void)
{
    struct bridge bridge;
    struct failure failure = {.text = ""};
    CHECK(bridge_open(&bridge, &BRIDGE_NO_FAULTS, &failure));
    for (int i = 0; i < QUEUE_BYTES + 5; i++)
        bridge_put(&bridge, (uint8_t)i);
    CHECK(bridge.bytes_lost == 5);
    CHECK(bridge.to_host.count == QUEUE_BYTES);
    bridge_close(&bridge);
    CHECK(bridge.bytes_lost == QUEUE_BYTES + 5);
}

void line_tests(void)
{
    reads_frames_and_skips_damaged_ones();
    counts_conversions_between_start_and_stop();
    passes_bytes_both_ways();
    turns_the_dials_for_a_bad_line();
    counts_what_a_full_queue_loses();
}
