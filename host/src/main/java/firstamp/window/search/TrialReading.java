package firstamp.window.search;

import firstamp.locate.wire.PlaceKind;
import firstamp.locate.wire.WireCase;
import firstamp.locate.wire.WireStep;
import javax.swing.JTextField;

/** What was read off a meter, out of the fields of the trial page. */
final class TrialReading {
  private TrialReading() {}

  /** The reading that says short, read once more. */
  static WireStep again(WireCase now, String wire, JTextField first, JTextField second) {
    String place = now.answer(wire).found().place();
    if (place != null) {
      return new WireStep.PlaceOhms(place, number(first));
    }
    String chassis =
        now.steps().stream()
            .map(WireStep::bare)
            .filter(one -> one instanceof WireStep.WireOhms && wire.equals(one.wire()))
            .map(WireStep::place)
            .filter(name -> now.place(name).kind() == PlaceKind.CHASSIS)
            .reduce((one, other) -> other)
            .orElseThrow();
    return new WireStep.WireOhms(wire, chassis, number(first), optional(second));
  }

  static double number(JTextField field) {
    return Double.parseDouble(field.getText().strip().replace(',', '.'));
  }

  static Double optional(JTextField field) {
    return field.getText().isBlank() ? null : (Double) number(field);
  }
}
