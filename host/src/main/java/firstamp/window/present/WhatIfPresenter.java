package firstamp.window.present;

import firstamp.bench.Snapshot;
import firstamp.model.Alarm;
import firstamp.model.LimitKind;
import firstamp.run.LimitMove;
import firstamp.study.EarlierPowerUp;
import firstamp.window.words.Numbers;
import firstamp.window.words.Signs;
import firstamp.window.words.Words;
import java.util.ArrayList;
import java.util.List;

/** What happened beside what other limits would have done. */
public final class WhatIfPresenter {
  private final Words words;
  private final Numbers numbers;
  private final AlarmSentences said;
  private final LimitPresenter limits;

  public WhatIfPresenter(Words words, Numbers numbers) {
    this.words = words;
    this.numbers = numbers;
    this.said = new AlarmSentences(words, numbers);
    this.limits = new LimitPresenter(words, numbers);
  }

  /**
   * Two columns of lines.
   *
   * @param title over both
   * @param left heading and lines of what happened
   * @param right heading and lines of what would have happened
   */
  public record Sides(String title, List<String> left, List<String> right) {}

  /** Null while nobody has asked. */
  public Sides sides(Snapshot now) {
    Snapshot.WhatIf what = now.beside().whatIf();
    if (what == null || now.replay() == null) {
      return compared(now);
    }
    double zero = ReplayPresenter.zero(now);
    List<String> left = new ArrayList<>(List.of(words.get("whatif.was")));
    List<String> right = new ArrayList<>(List.of(words.get("whatif.with")));
    String title = words.get("whatif.title", String.join(", ", changes(now, what)));
    offLines(now, zero, left);
    alarms(now.replay().events().isEmpty() ? List.of() : now.findings().alarms(), left);
    if (what.share() < 1) {
      right.add(words.get("whatif.working", numbers.fixed(100 * what.share(), 0)));
      return new Sides(title, left, right);
    }
    would(what, zero, right);
    return new Sides(title, left, right);
  }

  private void would(Snapshot.WhatIf what, double zero, List<String> lines) {
    if (what.judged() == Snapshot.Judged.NOTHING) {
      lines.add(what.firstOff().in(words.locale()));
      return;
    }
    if (what.judged() == Snapshot.Judged.RULES_ONLY) {
      lines.add(words.get("whatif.readingsOnly"));
    }
    if (what.firstOffMs() == null) {
      lines.add(words.get("whatif.noOff"));
      alarms(what.alarms(), lines);
      return;
    }
    String why = what.firstOff() == null ? "" : what.firstOff().in(words.locale());
    lines.add(words.get("whatif.off", numbers.moment(what.firstOffMs() - zero), why));
    alarms(what.alarms(), lines);
    lines.add(words.get("whatif.rest"));
  }

  /** Two power-ups: what changed, and how they are drawn. */
  private Sides compared(Snapshot now) {
    EarlierPowerUp other = now.beside().earlier();
    if (now.replay() == null || other == null) {
      return null;
    }
    List<String> changed = new ArrayList<>(List.of(words.get("compare.changed")));
    if (other.changes() == null) {
      changed.add(words.get("compare.working"));
    } else {
      List<String> lines = other.changes().in(words.locale());
      lines.forEach(line -> changed.add(Signs.in(line)));
      if (lines.isEmpty()) {
        changed.add(words.get("compare.nothing"));
      }
    }
    return new Sides(
        words.get("compare.title", String.valueOf(other.powerUp()), String.valueOf(now.powerUp())),
        changed,
        List.of(
            words.get("compare.drawn"),
            words.get("compare.drawn.how", String.valueOf(other.powerUp()))));
  }

  private List<String> changes(Snapshot now, Snapshot.WhatIf what) {
    List<String> changes = new ArrayList<>();
    for (LimitKind kind : LimitKind.values()) {
      for (int rail = kind == LimitKind.RAIL_OVER_V ? 1 : 0; rail <= 3; rail++) {
        Double was = kind.in(now.sheet(), rail);
        Double would = kind.in(what.sheet(), rail);
        if (would != null && !would.equals(was)) {
          changes.add(limits.say(now, new LimitMove(kind, rail, would)));
        }
        if (kind != LimitKind.RAIL_OVER_V) {
          break;
        }
      }
    }
    return changes.isEmpty() ? List.of(words.get("whatif.sheet")) : changes;
  }

  private void offLines(Snapshot now, double zero, List<String> lines) {
    for (Snapshot.ReplayEvent event : now.replay().events()) {
      if (event.kind() == Snapshot.EventKind.TRIP) {
        lines.add(words.get("whatif.tripped", numbers.moment(event.ms() - zero)));
        return;
      }
      if (event.kind() == Snapshot.EventKind.OFF) {
        lines.add(words.get("whatif.wasOff", numbers.moment(event.ms() - zero)));
        return;
      }
    }
  }

  private void alarms(List<Alarm> alarms, List<String> lines) {
    if (alarms.isEmpty()) {
      lines.add(words.get("whatif.noAlarm"));
    }
    for (Alarm alarm : alarms) {
      lines.add(words.get("whatif.alarm", numbers.moment(alarm.atMs()), said.headline(alarm)));
    }
  }
}
