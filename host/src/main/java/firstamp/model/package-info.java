/**
 * Values that every other package shares: channels and their plan, time, calibration, readings,
 * events of the probe, alarms, the summary of a power-up.
 *
 * <p>Depends on nothing but the JDK. Everything here is an immutable value unless it says
 * otherwise, and safe to hand from one thread to another.
 */
package firstamp.model;
