/**
 * The same scripted scenarios on every kind of probe: the emulated one, the firmware in the
 * simulated chip, and with {@code -Dprobe.port=PORT} a board.
 */
package firstamp.conformance;
