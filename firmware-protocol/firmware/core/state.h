/* The states' transitions, and limits that take effect in them. */
#ifndef CORE_STATE_H
#define CORE_STATE_H

#include "probe.h"

void state_enter(struct probe *probe, enum probe_state state, enum switch_by by, uint32_t tick_us);
void state_enter_now(struct probe *probe, enum probe_state state, enum switch_by by);
/* Opens switch and look path; no trip. */
void state_off(struct probe *probe, enum switch_by by);
/* A payload that passed its checks; tightens what is watched while the switch is on. */
void state_set_limits(struct probe *probe, const uint8_t *limits);
void state_clear_trip(struct probe *probe);

#endif
