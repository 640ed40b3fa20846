/**
 * The job sheet: strict reading with errors that name line and column, defaults, writing back, and
 * in words what will be watched.
 *
 * <p>May use {@code model} and Jackson. No threads; the only file it touches is the sheet it is
 * asked for.
 */
package firstamp.sheet;
