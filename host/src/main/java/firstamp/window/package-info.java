/**
 * The window at the bench: shows snapshots of a session and takes the person's wishes to it.
 *
 * <p>Presenters turn a snapshot into words, states and pictures without Swing and are tested
 * without a display; the parts that see Swing only lay out and paint what a presenter has made. All
 * of Swing runs on its own thread, which never waits for disk, port or analysis.
 */
package firstamp.window;
