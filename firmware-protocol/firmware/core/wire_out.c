#include "wire_out.h"

#include "compiler.h"

#include "crc16.h"
#include "hal.h"
#include "wire.h"

void wire_out_delimit(struct wire_out *out)
{
    out->ring[out->head] = 0;
    out->head++;
}

uint8_t wire_out_used(const struct wire_out *out)
{
    return (uint8_t)(out->head - out->tail);
}

uint8_t wire_out_free(const struct wire_out *out)
{
    return (uint8_t)(255u - wire_out_used(out));
}

void wire_out_cobs_begin(struct wire_out *out)
{
    out->code_at = out->head;
    out->write = (uint8_t)(out->head + 1);
    out->run = 1;
}

/* A run of 254 bytes is closed only when another byte follows, so nothing extra stands at the end. */
void wire_out_cobs_byte(struct wire_out *out, uint8_t byte)
{
    if (out->run == 255) {
        out->ring[out->code_at] = 255;
        out->code_at = out->write++;
        out->run = 1;
    }
    if (byte == 0) {
        out->ring[out->code_at] = out->run;
        out->code_at = out->write++;
        out->run = 1;
    } else {
        out->ring[out->write++] = byte;
        out->run++;
    }
}

void wire_out_cobs_end(struct wire_out *out)
{
    out->ring[out->code_at] = out->run;
    out->ring[out->write++] = 0;
    out->head = out->write;
}

bool wire_out_begin(struct wire_out *out, uint8_t type, uint32_t tick_us, uint8_t payload_bytes)
{
    if (wire_out_free(out) < WIRE_OUT_BYTES(payload_bytes))
        return false;
    wire_out_cobs_begin(out);
    out->crc = CRC16_START;
    wire_out_u8(out, WIRE_VERSION);
    wire_out_u8(out, type);
    wire_out_u16(out, out->sequence++);
    wire_out_u32(out, tick_us);
    return true;
}

void wire_out_u8(struct wire_out *out, uint8_t value)
{
    CORE_NEAR(out);
    out->crc = crc16_add(out->crc, value);
    wire_out_cobs_byte(out, value);
}

void wire_out_u16(struct wire_out *out, uint16_t value)
{
    wire_out_u8(out, (uint8_t)value);
    wire_out_u8(out, (uint8_t)(value >> 8));
}

void wire_out_u32(struct wire_out *out, uint32_t value)
{
    wire_out_u16(out, (uint16_t)value);
    wire_out_u16(out, (uint16_t)(value >> 16));
}

void wire_out_bytes(struct wire_out *out, const uint8_t *bytes, uint8_t length)
{
    CORE_NEAR(out);
    /* Most bytes of the stream go through here: what changes is kept out of memory. */
    uint16_t crc = out->crc;
    uint8_t write = out->write;
    uint8_t run = out->run;
    for (uint8_t at = 0; at < length; at++) {
        uint8_t byte = bytes[at];
        crc = crc16_add(crc, byte);
        if (byte == 0 || run == 255) {
            out->write = write;
            out->run = run;
            wire_out_cobs_byte(out, byte);
            write = out->write;
            run = out->run;
        } else {
            out->ring[write++] = byte;
            run++;
        }
    }
    out->crc = crc;
    out->write = write;
    out->run = run;
}

void wire_out_end(struct wire_out *out)
{
    uint16_t crc = out->crc;
    wire_out_u16(out, crc);
    wire_out_cobs_end(out);
    hal_uart_kick();
}
