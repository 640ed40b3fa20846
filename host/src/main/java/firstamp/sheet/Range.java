package firstamp.sheet;

import firstamp.model.text.Numbers;

/**
 * What a number may be; both ends belong to it.
 *
 * @param low lowest
 * @param high highest
 * @param unit of both, empty = none
 */
record Range(double low, double high, String unit) {
  boolean holds(double value) {
    return Double.isFinite(value) && value >= low && value <= high;
  }

  String text() {
    String text = Numbers.text(low) + " to " + Numbers.text(high);
    return unit.isEmpty() ? text : text + " " + unit;
  }
}
