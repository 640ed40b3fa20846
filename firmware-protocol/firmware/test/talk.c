#include "talk.h"

#include <string.h>

#include "check.h"
#include "core/bytes.h"
#include "core/crc16.h"
#include "core/wire.h"
#include "core/wire_in.h"
#include "hal_fake.h"

/* Volts across the look resistor: 330 ohm * 0.390625 mA / 58.59375 mV = 2.2 counts a count. */
const uint8_t talk_look[LOOK_PARAMETER_BYTES] = {0, 0, 0xE8, 3, 0x33, 2, 5, 0, 51, 0, 61, 0, 236, 0};
const uint8_t talk_no_look[LOOK_PARAMETER_BYTES] = {1, 0, 0xE8, 3, 0x33, 2, 5, 0, 51, 0, 61, 0, 236, 0};

static uint16_t sequence;
static size_t heard_to;
static int detail;

void talk_fresh(struct probe *probe)
{
    fake_reset_all(probe);
    heard_to = 0;
}

uint16_t talk_send(uint8_t type, const uint8_t *payload, size_t length)
{
    uint8_t plain[300] = {WIRE_VERSION, type, (uint8_t)sequence, (uint8_t)(sequence >> 8)};
    uint8_t line[310];
    size_t at = WIRE_HEADER_BYTES;
    if (length > 0)
        memcpy(plain + at, payload, length);
    at += length;
    uint16_t crc = crc16_of(plain, (uint16_t)at);
    bytes_put_u16(plain + at, crc);
    at += 2;
    size_t code = 0;
    size_t to = 1;
    for (size_t i = 0; i < at; i++) {
        if (plain[i] == 0 || to - code == 255) {
            line[code] = (uint8_t)(to - code);
            code = to++;
        }
        if (plain[i] != 0)
            line[to++] = plain[i];
    }
    line[code] = (uint8_t)(to - code);
    line[to++] = 0;
    fake_receive(line, to);
    return sequence++;
}

bool talk_hear(struct heard *heard)
{
    while (heard_to < fake.from_probe_length && fake.from_probe[heard_to] == 0)
        heard_to++; /* an empty frame */
    if (heard_to >= fake.from_probe_length)
        return false;
    uint8_t frame[256];
    size_t length = 0;
    while (heard_to < fake.from_probe_length && fake.from_probe[heard_to] != 0 && length < sizeof frame)
        frame[length++] = fake.from_probe[heard_to++];
    heard_to++;
    int16_t plain = wire_in_cobs(frame, (uint8_t)length);
    CHECK(plain >= WIRE_SHORTEST_BYTES);
    CHECK_IS(crc16_of(frame, (uint16_t)(plain - 2)), bytes_u16(frame + plain - 2));
    heard->type = frame[1];
    heard->sequence = bytes_u16(frame + 2);
    heard->tick_us = bytes_u32(frame + 4);
    heard->payload_bytes = (uint8_t)(plain - WIRE_SHORTEST_BYTES);
    memcpy(heard->payload, frame + WIRE_HEADER_BYTES, heard->payload_bytes);
    return true;
}

bool talk_hear_type(uint8_t type, struct heard *heard)
{
    while (talk_hear(heard))
        if (heard->type == type)
            return true;
    return false;
}

void talk_forget(void)
{
    fake.from_probe_length = 0;
    heard_to = 0;
}

int talk_command(uint8_t type, const uint8_t *payload, size_t length)
{
    struct heard heard;
    talk_forget();
    uint16_t sent = talk_send(type, payload, length);
    fake_run(64);
    while (talk_hear(&heard)) {
        bool answer = heard.type == MESSAGE_ACCEPTED || heard.type == MESSAGE_REFUSED;
        if (!answer || heard.payload[0] != type || bytes_u16(heard.payload + 1) != sent)
            continue;
        detail = heard.type == MESSAGE_REFUSED ? bytes_u16(heard.payload + 4) : 0;
        return heard.type == MESSAGE_REFUSED ? heard.payload[3] : 0;
    }
    return -1;
}

int talk_detail(void)
{
    return detail;
}

void talk_limits(const struct limits *l, uint8_t payload[48])
{
    memset(payload, 0, 48);
    bytes_put_u16(payload, l->inrush_ms);
    bytes_put_u16(payload + 2, l->inrush_i_counts);
    bytes_put_u16(payload + 4, l->running_i_counts);
    bytes_put_u16(payload + 6, l->running_j_counts);
    bytes_put_u16(payload + 8, l->peak_i_counts);
    bytes_put_u16(payload + 10, l->mean_i_16ths);
    bytes_put_u16(payload + 12, l->mean_j_16ths);
    payload[14] = l->confirm_i;
    payload[15] = l->confirm_j;
    payload[16] = l->confirm_rail;
    payload[17] = l->confirm_v;
    bytes_put_u32(payload + 18, l->i2t_budget_counts2);
    bytes_put_u16(payload + 22, l->i2t_running_counts);
    for (int rail = 0; rail < RAILS; rail++) {
        bytes_put_u16(payload + 24 + 2 * rail, l->rail_low_counts[rail]);
        bytes_put_u16(payload + 30 + 2 * rail, l->rail_high_counts[rail]);
    }
    bytes_put_u16(payload + 36, l->over_v_counts);
    bytes_put_u16(payload + 38, l->silence_ms);
    bytes_put_u16(payload + 40, l->look_over_j_counts);
    bytes_put_u16(payload + 42, l->start_i_counts);
    bytes_put_u16(payload + 44, l->start_ms);
}

struct limits talk_no_limits(void)
{
    struct limits limits;
    memset(&limits, 0, sizeof limits);
    limits.confirm_i = limits.confirm_j = limits.confirm_rail = limits.confirm_v = 3;
    for (int rail = 0; rail < RAILS; rail++)
        limits.rail_high_counts[rail] = 1023;
    limits.silence_ms = 2000;
    return limits;
}

void talk_run_ms(uint32_t ms)
{
    for (; ms > 100; ms -= 100) {
        talk_send(HOST_HEARTBEAT, NULL, 0);
        fake_run_ms(100);
    }
    talk_send(HOST_HEARTBEAT, NULL, 0);
    fake_run_ms(ms);
}

void talk_switch_on(const struct limits *limits)
{
    uint8_t payload[48];
    talk_limits(limits, payload);
    CHECK_IS(talk_command(HOST_LIMITS, payload, sizeof payload), 0);
    CHECK_IS(talk_command(HOST_SWITCH_ON, talk_no_look, sizeof talk_no_look), 0);
    for (int tries = 0; tries < 300 && fake.path != HAL_PATH_SWITCH; tries++)
        fake_run_ms(1);
    CHECK_IS(fake.path, HAL_PATH_SWITCH);
    fake_run_ms(1);
    CHECK_IS(fake.probe->state, STATE_ON);
}

void talk_ask_on(const uint8_t look[LOOK_PARAMETER_BYTES], const struct limits *limits)
{
    uint8_t payload[48];
    talk_limits(limits, payload);
    fake_run_ms(5);
    CHECK_IS(talk_command(HOST_LIMITS, payload, sizeof payload), 0);
    talk_forget();
    talk_send(HOST_SWITCH_ON, look, LOOK_PARAMETER_BYTES);
}

void talk_switched_on(struct probe *probe, const struct limits *limits)
{
    talk_fresh(probe);
    fake_run_ms(5);
    talk_switch_on(limits);
    talk_forget();
}
