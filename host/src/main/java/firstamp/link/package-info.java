/**
 * Opens a serial port and moves bytes. The only package that sees the serial library; knows nothing
 * of frames.
 *
 * <p>Each open port owns two threads, one that reads and one that writes. May use {@code model}.
 */
package firstamp.link;
