/* The host's side for tests: frames to the probe, frames from it. */
#ifndef TEST_TALK_H
#define TEST_TALK_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "core/probe.h"

struct heard {
    uint8_t type;
    uint16_t sequence;
    uint32_t tick_us;
    uint8_t payload[244];
    uint8_t payload_bytes;
};

/* A blank probe, and nothing heard yet. */
void talk_fresh(struct probe *probe);
/* Encodes and gives to the line; the probe has not run yet. Returns the sequence. */
uint16_t talk_send(uint8_t type, const uint8_t *payload, size_t length);
/* Next frame of the probe; false = none left. A broken one fails the test. */
bool talk_hear(struct heard *heard);
/* Skips to the next frame of this type. */
bool talk_hear_type(uint8_t type, struct heard *heard);
/* Forgets what was said. */
void talk_forget(void);
/* Sends, runs 4 ms, and returns the reason of refusal, 0 = accepted, -1 = no answer. */
int talk_command(uint8_t type, const uint8_t *payload, size_t length);
int talk_detail(void);

void talk_limits(const struct limits *limits, uint8_t payload[48]);
/* Limits that watch nothing, rows of 3, 3, 3 and 3, silence 2000 ms. */
struct limits talk_no_limits(void);
extern const uint8_t talk_look[LOOK_PARAMETER_BYTES];
extern const uint8_t talk_no_look[LOOK_PARAMETER_BYTES];
/* From off to on without a look; leaves the heartbeat to the test. */
void talk_switch_on(const struct limits *limits);
/* A blank probe that is on, and nothing heard of it yet. */
void talk_switched_on(struct probe *probe, const struct limits *limits);
/* Gives the limits and asks for the closing; does not wait for what comes of it. */
void talk_ask_on(const uint8_t look[LOOK_PARAMETER_BYTES], const struct limits *limits);
/* Runs so long with a heartbeat every 100 ms. */
void talk_run_ms(uint32_t ms);

#endif
