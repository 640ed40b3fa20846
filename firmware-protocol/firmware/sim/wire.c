#include "wire.h"

uint16_t wire_crc16(const uint8_t *bytes, size_t length)
{
    uint16_t crc = 0xFFFF;
    for (size_t i = 0; i < length; i++) {
        crc = (uint16_t)(crc ^ bytes[i] << 8);
        for (int bit = 0; bit < 8; bit++)
            crc = (uint16_t)(crc & 0x8000 ? crc << 1 ^ 0x1021 : crc << 1);
    }
    return crc;
}

static bool cobs_decode(const uint8_t *coded, size_t length, struct wire_frame *frame)
{
    frame->length = 0;
    for (size_t i = 0; i < length;) {
        size_t code = coded[i++];
        if (code == 0 || i + code - 1 > length || frame->length + code - 1 > WIRE_MAX_FRAME)
            return false;
        for (size_t k = 1; k < code; k++)
            frame->bytes[frame->length++] = coded[i++];
        if (code < 255 && i < length) {
            if (frame->length == WIRE_MAX_FRAME)
                return false;
            frame->bytes[frame->length++] = 0;
        }
    }
    return true;
}

bool wire_receive(struct wire_receiver *receiver, uint8_t byte, struct wire_frame *frame)
{
    if (byte != 0) {
        if (receiver->length == WIRE_MAX_CODED)
            receiver->too_long = true;
        else
            receiver->coded[receiver->length++] = byte;
        return false;
    }
    bool whole = !receiver->too_long && cobs_decode(receiver->coded, receiver->length, frame);
    receiver->length = 0;
    receiver->too_long = false;
    return whole && frame->length >= WIRE_HEADER_BYTES + WIRE_CRC_BYTES && frame->bytes[0] == WIRE_VERSION
           && wire_crc16(frame->bytes, frame->length - WIRE_CRC_BYTES)
                  == wire_u16(frame->bytes + frame->length - WIRE_CRC_BYTES);
}
