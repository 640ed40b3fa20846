/*
 * What the main loop watches on the stream of conversions for a while after a closing (the volts are those that the
 * look foretold) and after an opening (nothing flows). Rules in wire-format.md section 4.
 */
#ifndef CORE_AFTERWARDS_H
#define CORE_AFTERWARDS_H

#include "probe.h"

/* The switch is about to close, and what the look found is still there. */
void afterwards_start(struct probe *probe);
bool afterwards_listens(const struct probe *probe);
/* Of I, J or V. */
void afterwards_conversion(struct probe *probe, const struct conversion *conversion);

#endif
