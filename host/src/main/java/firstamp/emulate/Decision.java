package firstamp.emulate;

import firstamp.protocol.TripCause;

/**
 * Why the switch must open.
 *
 * @param channel that decided, 255 none
 * @param confirmed conversions in a row over the limit
 * @param crossedTickMicros when the limit was crossed
 * @param value counts (mean: 1/16 count)
 * @param limit in the same unit, absolute
 */
record Decision(
    TripCause cause, int channel, int confirmed, long crossedTickMicros, int value, int limit) {}
