package firstamp.cli.command;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.Said;
import firstamp.cli.output.Studies;
import firstamp.log.BenchLog;
import firstamp.model.text.Worded;
import firstamp.study.PowerUpStudy;
import firstamp.study.StudyPart;

/**
 * An ID with the number of a mark: {@code 12#2} is what follows mark 2 of power-up 12, {@code 12#0}
 * what came before its first mark.
 */
final class PartId {
  private PartId() {}

  static StudyPart read(BenchLog log, String id) throws CliFailure {
    int at = id.lastIndexOf('#');
    if (at < 0) {
      return StudyPart.of(Studies.read(log, id), null);
    }
    PowerUpStudy study = Studies.read(log, id.substring(0, at));
    int count = study.evidence().stretches().size();
    StudyPart part = null;
    String number = id.substring(at + 1);
    if (number.matches("[0-9]{1,4}")) {
      part = StudyPart.of(study, Integer.valueOf(number));
    }
    if (part == null) {
      throw new CliFailure(
          ExitCode.NO_INPUT,
          count == 0
              ? Said.of("part.none", study.entry().number(), number)
              : Said.of("part.no-such", study.entry().number(), number, count - 1));
    }
    return part;
  }

  /** A part in a heading. */
  static Worded name(StudyPart part) {
    Worded whole = Studies.name(part.study().entry());
    if (part.stretch() == null) {
      return whole;
    }
    if (part.stretch().number() == 0) {
      return Said.of("part.first", whole);
    }
    String mark = part.stretch().mark();
    return mark == null || mark.isBlank()
        ? Said.of("part.after", whole, part.stretch().number())
        : Said.of("part.after.mark", whole, part.stretch().number(), mark);
  }
}
