package firstamp.sheet;

import firstamp.model.text.Wording.Phrase;
import firstamp.model.text.Wording.Quantity;

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

  Phrase phrase() {
    return new Phrase("to", low, unit.isEmpty() ? (Object) high : new Quantity(high, unit));
  }
}
