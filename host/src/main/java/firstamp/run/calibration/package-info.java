/**
 * Step by step with the probe outside a power-up: calibration, and the test that it switches off.
 */
package firstamp.run.calibration;
