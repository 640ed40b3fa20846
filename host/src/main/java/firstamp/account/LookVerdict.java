package firstamp.account;

import firstamp.analysis.figures.Evidence;
import firstamp.analysis.figures.FigureText;
import firstamp.model.Summary;

/** Sentences about the first look. */
final class LookVerdict {
  private final Evidence evidence;
  private final VerdictWriter writer;

  LookVerdict(Evidence evidence, VerdictWriter writer) {
    this.evidence = evidence;
    this.writer = writer;
  }

  void judge() {
    Summary.LookFigures look = evidence.look();
    if (look == null) {
      return;
    }
    boolean ohmKnown = look.ohm() != null;
    String ohm = ohmKnown ? FigureText.of(look.ohm(), "ohm") : "";
    switch (look.result()) {
      case "short" -> {
        if (ohmKnown) {
          writer.say(2, "look.short", 0, ohm);
        }
      }
      case "low" -> {
        if (ohmKnown) {
          writer.say(6, "look.low", 0, ohm);
        }
      }
      case "nothing-joined" -> writer.say(4, "look.none", 0);
      default -> {
        // The others raise alarms of their own, or need no sentence.
      }
    }
  }
}
