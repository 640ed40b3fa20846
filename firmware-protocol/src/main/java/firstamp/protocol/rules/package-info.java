/**
 * What the probe's limits decide about conversions, in the firmware's integers ({@code
 * firmware-protocol/trip-rules.md}).
 *
 * <p>The one copy of the firmware's arithmetic outside the chip: the emulated probe opens its
 * switch by it, and a logged power-up is judged by it under other limits. Pure: no clock, no
 * thread; each object belongs to one thread.
 */
package firstamp.protocol.rules;
