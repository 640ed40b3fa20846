package firstamp.run;

import firstamp.model.text.Worded;
import firstamp.model.text.Wording.Phrase;
import firstamp.model.text.Wording.Quantity;

/** What the steps of a staged bring-up say. */
final class StepWords {
  private static final String BUNDLE = "firstamp.run.steps";

  /** Under this current the resistance is nothing to be told. */
  private static final double LEAST_A = 1e-4;

  private StepWords() {}

  static Worded of(String key, Object... values) {
    return Worded.of(BUNDLE, key, values);
  }

  /** Volts, current and resistance at the end of a step. */
  static Worded said(double volts, double ampere) {
    Object ohm =
        ampere < LEAST_A ? new Phrase("many") : (Object) new Quantity(volts / ampere, "ohm");
    return of("settled", new Quantity(volts, "V"), Quantity.amps(ampere), ohm);
  }
}
