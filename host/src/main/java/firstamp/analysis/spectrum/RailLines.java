package firstamp.analysis.spectrum;

/**
 * A rail's lines at the multiples of the mains frequencies in one window.
 *
 * @param rail 1 to 3
 * @param firstIndex conversion index of the window's begin
 * @param lines of it
 * @param clipped whether a conversion stood at an end of the range: then neither lines nor ripple
 *     can be told
 */
public record RailLines(int rail, long firstIndex, MainsLines lines, boolean clipped) {}
