#include "wire_in.h"

#include "bytes.h"
#include "crc16.h"
#include "wire.h"

void wire_in_start(struct wire_in *in, uint8_t *buffer, uint8_t capacity)
{
    in->buffer = buffer;
    in->capacity = capacity;
}

uint8_t wire_in_payload_bytes(uint8_t type)
{
    switch (type) {
    case HOST_LIMITS:
        return LIMITS_BYTES;
    case HOST_LOOK:
    case HOST_SWITCH_ON:
        return LOOK_PARAMETER_BYTES;
    case HOST_RESTORE:
        return 2 + LOOK_PARAMETER_BYTES;
    case HOST_CALIBRATION_WRITE:
        return CALIBRATION_BYTES;
    case HOST_SEND_AGAIN:
        return 3;
    case HOST_CLEAR_TRIP:
        return 2;
    case HOST_HELLO:
    case HOST_STREAM:
    case HOST_SWITCH_OFF:
    case HOST_SOUND:
    case HOST_PEDAL:
        return 1;
    case HOST_HEARTBEAT:
    case HOST_CALIBRATION_READ:
    case HOST_STATUS_REQUEST:
    case HOST_SELF_TEST:
    case HOST_CLIPS:
        return 0;
    default:
        return 255;
    }
}

int16_t wire_in_cobs(uint8_t *bytes, uint8_t length)
{
    uint8_t from = 0;
    uint8_t to = 0;
    while (from < length) {
        uint8_t code = bytes[from++];
        if (code == 0 || (uint8_t)(code - 1) > (uint8_t)(length - from))
            return -1;
        for (uint8_t left = (uint8_t)(code - 1); left > 0; left--)
            bytes[to++] = bytes[from++];
        /* to stays behind from, because each code byte is read before at most its own zero is written. */
        if (code != 255 && from < length)
            bytes[to++] = 0;
    }
    return to;
}

static enum wire_fault decode(struct wire_in *in, struct wire_frame *frame)
{
    int16_t length = wire_in_cobs(in->buffer, in->held);
    if (length < 0)
        return WIRE_BAD_COBS;
    if (length < WIRE_SHORTEST_BYTES)
        return WIRE_TOO_SHORT;
    uint8_t covered = (uint8_t)(length - WIRE_CRC_BYTES);
    if (crc16_of(in->buffer, covered) != bytes_u16(in->buffer + covered))
        return WIRE_BAD_CRC;
    frame->type = in->buffer[1];
    /* A host of any version gets an answer, so that both can report the version. */
    if (in->buffer[0] != WIRE_VERSION && frame->type != HOST_HELLO)
        return WIRE_WRONG_VERSION;
    frame->sequence = bytes_u16(in->buffer + 2);
    frame->payload = in->buffer + WIRE_HEADER_BYTES;
    frame->payload_bytes = (uint8_t)(covered - WIRE_HEADER_BYTES);
    uint8_t expected = wire_in_payload_bytes(frame->type);
    if (expected == 255)
        return WIRE_UNKNOWN_TYPE;
    return frame->payload_bytes == expected ? WIRE_FINE : WIRE_WRONG_LENGTH;
}

static void reject(struct wire_in *in, enum wire_fault fault)
{
    in->rejected++;
    in->last_fault = (uint8_t)fault;
}

bool wire_in_byte(struct wire_in *in, uint8_t byte, struct wire_frame *frame)
{
    if (byte != 0) {
        if (in->skipping)
            return false;
        if (in->held == in->capacity) {
            in->skipping = true;
            reject(in, WIRE_TOO_LONG);
            return false;
        }
        in->buffer[in->held++] = byte;
        return false;
    }
    bool whole = in->held > 0 && !in->skipping;
    enum wire_fault fault = whole ? decode(in, frame) : WIRE_FINE;
    in->held = 0;
    in->skipping = false;
    if (fault != WIRE_FINE)
        reject(in, fault);
    return whole && fault == WIRE_FINE;
}
