/**
 * Plain values that messages carry, checked for the range the wire format states: limits, scales,
 * calibration, the plan of slots.
 */
package firstamp.protocol.values;
