/*
 * Frames, against the shared vectors. Sources of crc.txt: CRC RevEng catalogue, check value of CRC-16/IBM-3740, and
 * AUTOSAR R21-11 Specification of CRC Routines 7.2.2.1 as quoted there; of cobs.txt: public table of examples (README
 * of cobs-codec) and Cheshire, Baker, IEEE/ACM ToN 7(2) 1999 from memory.
 */
#include <stdio.h>
#include <string.h>

#include "check.h"
#include "core/bytes.h"
#include "core/crc16.h"
#include "core/wire.h"
#include "core/wire_in.h"
#include "core/wire_out.h"
#include "vectors.h"

static void crc_vector(const struct vector *vector)
{
    uint8_t input[VECTOR_BYTES];
    uint8_t sum[VECTOR_BYTES];
    size_t length = vector_hex(vector->field[0], input);
    vector_hex(vector->field[1], sum);
    CHECK_IS(crc16_of(input, (uint16_t)length), sum[0] << 8 | sum[1]);
}

/* Takes what the encoder put into the ring, delimiter included. */
static size_t taken(struct wire_out *out, uint8_t *bytes)
{
    size_t length = 0;
    while (wire_out_take(out, bytes + length))
        length++;
    return length;
}

static void cobs_vector(const struct vector *vector)
{
    static struct wire_out out;
    uint8_t plain[VECTOR_BYTES];
    uint8_t encoded[VECTOR_BYTES];
    uint8_t decoded[VECTOR_BYTES];
    uint8_t made[VECTOR_BYTES];
    size_t plain_length = vector_hex(vector->field[0], plain);
    size_t encoded_length = vector_hex(vector->field[1], encoded);
    if (plain_length <= 253) { /* longer ones cannot be frames of the probe, whose ring holds 255 bytes */
        memset(&out, 0, sizeof out);
        wire_out_cobs_begin(&out);
        for (size_t i = 0; i < plain_length; i++)
            wire_out_cobs_byte(&out, plain[i]);
        wire_out_cobs_end(&out);
        size_t length = taken(&out, made);
        CHECK(length > 0 && made[length - 1] == 0);
        CHECK_BYTES(made, length - 1, encoded, encoded_length);
    }
    if (encoded_length <= 255) {
        memcpy(decoded, encoded, encoded_length);
        int16_t length = wire_in_cobs(decoded, (uint8_t)encoded_length);
        CHECK_BYTES(decoded, (size_t)length, plain, plain_length);
    }
}

/* Every frame of the probe in the vectors is made again from its payload. */
static void probe_frame_vector(const struct vector *vector)
{
    static struct wire_out out;
    uint8_t plain[VECTOR_BYTES];
    uint8_t line[VECTOR_BYTES];
    uint8_t made[VECTOR_BYTES];
    size_t length = vector_hex(vector->field[1], plain);
    size_t line_length = vector_hex(vector->field[2], line);
    if (plain[1] >= HOST_HELLO || length > 240)
        return;
    memset(&out, 0, sizeof out);
    out.sequence = bytes_u16(plain + 2);
    CHECK(wire_out_begin(&out, plain[1], bytes_u32(plain + 4), (uint8_t)(length - WIRE_SHORTEST_BYTES)));
    wire_out_bytes(&out, plain + WIRE_HEADER_BYTES, (uint8_t)(length - WIRE_SHORTEST_BYTES));
    wire_out_end(&out);
    size_t made_length = taken(&out, made);
    CHECK_BYTES(made, made_length, line, line_length);
}

static bool fed(struct wire_in *in, const uint8_t *bytes, size_t length, struct wire_frame *frame)
{
    bool got = false;
    for (size_t i = 0; i < length; i++)
        got = wire_in_byte(in, bytes[i], frame) || got;
    return got;
}

/* Every frame of the host is taken, whole, after noise, and right behind a broken one. */
static void host_frame_vector(const struct vector *vector)
{
    struct wire_in in = {0};
    struct wire_frame frame;
    uint8_t buffer[WIRE_IN_BYTES];
    uint8_t plain[VECTOR_BYTES];
    uint8_t line[VECTOR_BYTES];
    static const uint8_t noise[] = {0x55, 0x07, 0xFF, 0x00};
    size_t length = vector_hex(vector->field[1], plain);
    size_t line_length = vector_hex(vector->field[2], line);
    wire_in_start(&in, buffer, sizeof buffer);
    bool got = fed(&in, line, line_length, &frame);
    if (plain[1] < HOST_HELLO) {
        CHECK(!got);
        CHECK_IS(in.rejected, 1);
        return;
    }
    CHECK(got);
    CHECK_IS(frame.type, plain[1]);
    CHECK_IS(frame.sequence, bytes_u16(plain + 2));
    CHECK_BYTES(frame.payload, frame.payload_bytes, plain + WIRE_HEADER_BYTES, length - WIRE_SHORTEST_BYTES);
    CHECK_IS(in.rejected, 0);
    CHECK(!fed(&in, noise, sizeof noise, &frame));
    CHECK_IS(in.rejected, 1);
    CHECK(fed(&in, line, line_length, &frame));
    CHECK_IS(in.rejected, 1);
}

static void bad_vector(const struct vector *vector)
{
    static const char *const names[WIRE_FAULTS] = {
        [WIRE_TOO_LONG] = "too-long",           [WIRE_BAD_COBS] = "bad-cobs",
        [WIRE_TOO_SHORT] = "too-short",         [WIRE_BAD_CRC] = "bad-crc",
        [WIRE_WRONG_VERSION] = "wrong-version", [WIRE_UNKNOWN_TYPE] = "unknown-type",
        [WIRE_WRONG_LENGTH] = "wrong-length"};
    struct wire_in in = {0};
    struct wire_frame frame;
    uint8_t buffer[255]; /* as long as the format allows, so that the reasons are the format's */
    uint8_t plain[VECTOR_BYTES];
    uint8_t line[VECTOR_BYTES];
    size_t plain_length = vector_hex(vector->field[1], plain);
    size_t line_length = vector_hex(vector->field[2], line);
    bool of_probe = plain_length != SIZE_MAX && plain_length > 1 && plain[1] < HOST_HELLO;
    const char *expected = strstr(vector->field[3], "expect=");
    CHECK(expected != NULL);
    if (expected == NULL || strncmp(expected + 7, "bad-value", 9) == 0)
        return; /* in command_test */
    wire_in_start(&in, buffer, sizeof buffer);
    CHECK(!fed(&in, line, line_length, &frame));
    CHECK_IS(in.rejected, 1);
    if (!of_probe && in.last_fault != WIRE_FINE) {
        size_t length = strlen(names[in.last_fault]);
        if (strncmp(expected + 7, names[in.last_fault], length) != 0)
            fprintf(stderr, "%s: dropped as %s, vector says %s\n", vector->field[0], names[in.last_fault], expected);
        CHECK(strncmp(expected + 7, names[in.last_fault], length) == 0);
    }
}

static void too_long_is_counted_once(void)
{
    struct wire_in in = {0};
    struct wire_frame frame;
    uint8_t buffer[WIRE_IN_BYTES];
    wire_in_start(&in, buffer, sizeof buffer);
    for (int i = 0; i < 1000; i++)
        CHECK(!wire_in_byte(&in, 0x11, &frame));
    CHECK_IS(in.rejected, 1);
    CHECK_IS(in.last_fault, WIRE_TOO_LONG);
    CHECK(!wire_in_byte(&in, 0, &frame));
    CHECK_IS(in.rejected, 1);
}

static void full_ring_begins_no_frame(void)
{
    static struct wire_out out;
    uint8_t bytes[256];
    memset(&out, 0, sizeof out);
    uint16_t began = 0;
    while (wire_out_begin(&out, MESSAGE_SWITCH, 0, SWITCH_BYTES)) {
        wire_out_u16(&out, 0);
        wire_out_end(&out);
        began++;
    }
    CHECK_IS(began, 255 / (8 + 2 + 2 + 2));
    CHECK_IS(out.sequence, began);
    CHECK(taken(&out, bytes) <= 255);
}

void wire_tests(const char *vectors)
{
    CHECK(vectors_each(vectors, "crc.txt", crc_vector) >= 9);
    CHECK(vectors_each(vectors, "cobs.txt", cobs_vector) >= 12);
    CHECK(vectors_each(vectors, "messages.txt", probe_frame_vector) >= 60);
    CHECK(vectors_each(vectors, "messages.txt", host_frame_vector) >= 60);
    CHECK(vectors_each(vectors, "bad.txt", bad_vector) >= 60);
    too_long_is_counted_once();
    full_ring_begins_no_frame();
}
