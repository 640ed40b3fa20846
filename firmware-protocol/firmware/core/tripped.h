/* What the main loop does about a trip that the guard has claimed: the record, the latch, telling the host. */
#ifndef CORE_TRIPPED_H
#define CORE_TRIPPED_H

#include "probe.h"

/* Follows the guard: a closing seen in its interrupt, a trip claimed there. True when there was a trip. */
bool tripped_take(struct probe *probe);
/* Something that must be there is gone: a trip while on, an off before. */
void tripped_lost(struct probe *probe, enum trip_cause cause, enum switch_by by, uint16_t value);
/* The message goes out three times: at once, after 50 and after 200 ms. */
void tripped_tell_again(struct probe *probe, uint16_t now_plans);

#endif
