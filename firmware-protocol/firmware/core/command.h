/* What the host says: taken, checked against the state, done, answered. */
#ifndef CORE_COMMAND_H
#define CORE_COMMAND_H

#include "probe.h"

/* Called once a round: takes what has come, only while an answer would fit the line. True when it was one. */
bool command_receive(struct probe *probe);
/* The record is in the EEPROM, or was given up. */
void command_calibration_written(struct probe *probe);
/* For the fuzzer and the tests: one frame. */
void command_frame(struct probe *probe, const struct wire_frame *frame);

#endif
