package firstamp.bench;

import firstamp.account.Comparison;
import firstamp.account.ComparisonWords;
import firstamp.log.LogException;
import firstamp.log.PowerUpReader;
import firstamp.model.JobSheet;
import firstamp.model.ProbeEvent;
import firstamp.sheet.SheetException;
import firstamp.study.EarlierPowerUp;
import firstamp.study.PowerUpStudy;
import firstamp.trend.LoggedCourse;
import java.util.List;

/** Another logged power-up that is drawn behind a replay, and what changed since it. */
final class ReplayBeside {
  private static final long LONGEST_COMPARED_MS = 20 * 60_000;

  private ReplayBeside() {}

  /** The other one, aligned at switch-on; null where it was never switched on. */
  static EarlierPowerUp of(PowerUpReader other, JobSheet sheet) throws LogException {
    List<ProbeEvent> events = other.events();
    LoggedCourse behind = LoggedCourse.open(other, events);
    ReplayTrack others = new ReplayTrack(sheet, behind, events, List.of());
    Double closed = others.closedBy(behind.endMs());
    return closed == null
        ? null
        : new EarlierPowerUp(other.entry().number(), other.entry().baseline(), behind, closed);
  }

  /** The same with what changed; very long ones are drawn, not worked through. */
  static EarlierPowerUp compared(
      EarlierPowerUp drawn, LoggedCourse course, PowerUpReader reader, PowerUpReader other)
      throws LogException {
    if (course.endMs() > LONGEST_COMPARED_MS || drawn.course().endMs() > LONGEST_COMPARED_MS) {
      return drawn;
    }
    EarlierPowerUp.Changes changes;
    try {
      PowerUpStudy mine = PowerUpStudy.of(reader);
      Comparison found = mine.against(PowerUpStudy.of(other));
      changes = locale -> new ComparisonWords(locale).changes(found, mine.sheet());
    } catch (SheetException unreadable) {
      changes = locale -> List.of(unreadable.words().in(locale));
    }
    return new EarlierPowerUp(
        drawn.powerUp(), drawn.knownGood(), drawn.course(), drawn.closedMs(), changes);
  }
}
