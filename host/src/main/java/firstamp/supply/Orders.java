package firstamp.supply;

import java.io.IOException;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * What can be ordered from a supply, each order checked twice: the supply is asked what it took,
 * and whether it has an error to report.
 */
final class Orders {
  /** Decimal numbers of IEEE 488.2 answers. */
  private static final Pattern NUMBER = Pattern.compile("[+-]?(\\d+\\.?\\d*|\\.\\d+)(E[+-]?\\d+)?");

  private static final double SHARE = 0.01;
  private static final double LEAST_V = 0.02;
  private static final double LEAST_A = 0.002;
  private static final int MOST_ERRORS = 20;

  private final Dialogue dialogue;

  Orders(Dialogue dialogue) {
    this.dialogue = dialogue;
  }

  /** Asks for its name; earlier errors are cleared. */
  String begin() throws IOException, SupplyException {
    String name = dialogue.identify();
    dialogue.send("*CLS");
    if (outputOn()) {
      throw new SupplyException(SupplyException.Kind.WRONG, "on-already");
    }
    return name;
  }

  void volts(double volts) throws IOException, SupplyException {
    level("VOLT", volts, "V", LEAST_V);
  }

  void limit(double ampere) throws IOException, SupplyException {
    level("CURR", ampere, "A", LEAST_A);
  }

  private void level(String header, double value, String unit, double least)
      throws IOException, SupplyException {
    String text = String.format(Locale.ROOT, "%.4f", value);
    dialogue.send(header + " " + text);
    double taken = number(header + "?");
    noError(header + " " + text);
    if (Math.abs(taken - value) > Math.max(least, SHARE * value)) {
      throw new SupplyException(
          SupplyException.Kind.WRONG, "set-otherwise", text, String.valueOf(taken), unit);
    }
  }

  /** After the order to switch on. */
  void checkOn() throws IOException, SupplyException {
    noError("OUTP ON");
    if (!outputOn()) {
      throw new SupplyException(SupplyException.Kind.WRONG, "stays-off");
    }
  }

  /** Only asks; the order to switch off is sent by whoever wants it, without waiting. */
  boolean outputOn() throws IOException, SupplyException {
    String answer = dialogue.ask("OUTP?");
    return switch (answer) {
      case "1", "ON", "+1" -> true;
      case "0", "OFF", "+0" -> false;
      default -> throw new SupplyException(SupplyException.Kind.WRONG, "answers.output", answer);
    };
  }

  double measuredAmpere() throws IOException, SupplyException {
    return number("MEAS:CURR?");
  }

  private double number(String question) throws IOException, SupplyException {
    String answer = dialogue.ask(question);
    if (!NUMBER.matcher(answer.toUpperCase(Locale.ROOT)).matches()) {
      throw new SupplyException(SupplyException.Kind.WRONG, "answers.number", answer, question);
    }
    return Double.parseDouble(answer);
  }

  /** The first error is reported; the rest of the queue is read and discarded. */
  private void noError(String after) throws IOException, SupplyException {
    String first = null;
    for (int k = 0; k < MOST_ERRORS; k++) {
      String answer = dialogue.ask("SYST:ERR?");
      int comma = answer.indexOf(',');
      String code = comma < 0 ? answer : answer.substring(0, comma);
      if (!NUMBER.matcher(code).matches()) {
        throw new SupplyException(SupplyException.Kind.WRONG, "answers.error", answer);
      }
      if (Double.parseDouble(code) == 0) {
        break;
      }
      first = first == null ? answer : first;
    }
    if (first != null) {
      throw new SupplyException(SupplyException.Kind.REFUSED, "refuses", after, first);
    }
  }
}
