/**
 * The conversation with one probe: frames to events and back, commands sent again until they are
 * answered, the probe's clock fitted to the computer's, refusals in words.
 */
package firstamp.run.talk;
