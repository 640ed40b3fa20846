package firstamp.protocol.rules;

import firstamp.protocol.codes.TripCause;

/**
 * Why the switch must open.
 *
 * @param channel number of the channel that decided, 255 = none
 * @param confirmed conversions in a row over the limit
 * @param crossedTickMicros start of the first of them, or whatever crossed the limit
 * @param value counts (mean: 1/16 count)
 * @param limit in the same unit, absolute
 */
public record TripDecision(
    TripCause cause, int channel, int confirmed, long crossedTickMicros, int value, int limit) {}
