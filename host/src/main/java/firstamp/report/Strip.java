package firstamp.report;

/**
 * One lane of a picture.
 *
 * @param name written inside it
 * @param unit of its axis
 * @param x places on the common axis
 * @param y values
 * @param earlierX places of the power-up it is compared with, empty = none
 * @param earlierY values of that
 */
record Strip(
    String name, String unit, double[] x, double[] y, double[] earlierX, double[] earlierY) {

  private static final int LONGEST_NAME = 48;

  Strip {
    String legible = Html.legible(name);
    int end =
        legible.offsetByCodePoints(
            0, Math.min(LONGEST_NAME, legible.codePointCount(0, legible.length())));
    name = legible.substring(0, end);
  }

  Strip(String name, String unit, double[] x, double[] y) {
    this(name, unit, x, y, new double[0], new double[0]);
  }
}
