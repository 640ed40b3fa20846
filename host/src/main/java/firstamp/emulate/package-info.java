/**
 * The emulated probe, put together: the real wire format in, the real wire format out, with an
 * invented set or a waveform file behind it.
 *
 * <p>It decides in the same integers as the firmware ({@code probe}), owns its own clock and takes
 * dials for what can go wrong on a line ({@code line}). May use {@code model} and the codec. Runs
 * on the thread that reads from it; only {@code write}, {@code close} and the clock may be used
 * from another.
 */
package firstamp.emulate;
