/** Calibration of the converter's channels against the person's meter, with its uncertainty. */
package firstamp.analysis.calibrate;
