/**
 * Turns the stream of one power-up into readings, alarms and figures: live and in a replay the same
 * pipeline, so that both come to the same result.
 *
 * <p>Nothing may depend on anything outside the stream. Runs on the thread that feeds it; asks no
 * clock, does no input or output.
 */
package firstamp.pipeline;
