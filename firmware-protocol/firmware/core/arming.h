/*
 * What the main loop takes from the conversions apart from the stream: check, zeros and look before the
 * switch closes, and after it has opened whether anything still flows.
 */
#ifndef CORE_ARMING_H
#define CORE_ARMING_H

#include "probe.h"

/* Asked for on its own: reads the clips back, then a status tells them. */
void arming_read_back(struct probe *probe);
/* Whether there is something to listen to; it does not begin within a round. */
bool arming_listens(const struct probe *probe);
/* Of I, J and V, and while the clips are read back of all channels. */
void arming_conversion(struct probe *probe, const struct conversion *conversion);

#endif
