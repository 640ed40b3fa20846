/* Everything the probe says apart from the stream. */
#ifndef CORE_REPORT_H
#define CORE_REPORT_H

#include "probe.h"

/* What is answered to a frame: REFUSAL_NONE = accepted. */
struct answer {
    enum refusal refusal;
    uint16_t detail;
};
static const struct answer ACCEPTED = {REFUSAL_NONE, 0};
/* The caller has seen to the room. */
void report_answer(struct probe *probe, uint8_t type, uint16_t sequence, struct answer answer);
void report_calibration(struct probe *probe);
/* Sends what waits, as far as there is room. */
void report_run(struct probe *probe);

#endif
