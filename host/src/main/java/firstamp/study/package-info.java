/**
 * One stored power-up: replayed through the same pipeline, judged by other limits or other rules,
 * compared with others, taken as the trial of a wire.
 */
package firstamp.study;
