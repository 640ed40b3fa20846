/**
 * The box as it is soldered: what its parts' tolerances make of each input, and what a calibration
 * leaves of it.
 */
package firstamp.emulate.box;
