package firstamp.analysis.spectrum;

/**
 * Lines of head and rail in one window that is fit for reading hum.
 *
 * @param rail 1 to 3
 * @param firstIndex of the window
 * @param head lines
 * @param railLines lines
 * @param headNoise mean square that noise alone puts into one line of the head
 */
public record HumPair(
    int rail, long firstIndex, MainsLines head, MainsLines railLines, double headNoise) {
  public long endIndex() {
    return firstIndex + WindowCutter.CONVERSIONS;
  }
}
