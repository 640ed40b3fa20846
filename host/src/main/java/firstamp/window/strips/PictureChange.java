package firstamp.window.strips;

import firstamp.window.strips.StripsPicture.Strip;
import java.util.List;

/** From which column on a picture differs from the one before, so that only that is painted. */
final class PictureChange {
  /** All of it. */
  static final int ALL = -1;

  private PictureChange() {}

  /** First column that differs; {@link #ALL}, or the count of columns when nothing does. */
  static int from(StripsPicture before, StripsPicture now) {
    if (before == null
        || before.fromMs() != now.fromMs()
        || before.toMs() != now.toMs()
        || before.firstMs() != now.firstMs()
        || before.columnMs() != now.columnMs()
        || before.zeroMs() != now.zeroMs()
        || before.zeroIsOn() != now.zeroIsOn()
        || !before.events().equals(now.events())
        || before.strips().size() != now.strips().size()) {
      return ALL;
    }
    int from = Integer.MAX_VALUE;
    for (int at = 0; at < now.strips().size(); at++) {
      int changed = from(before.strips().get(at), now.strips().get(at));
      if (changed == ALL) {
        return ALL;
      }
      from = Math.min(from, changed);
    }
    return from;
  }

  private static int from(Strip before, Strip now) {
    if (!before.name().equals(now.name())
        || !levels(before).equals(levels(now))
        || before.traces().size() != now.traces().size()
        || before.bands().size() != now.bands().size()
        || before.behind().size() != now.behind().size()) {
      return ALL;
    }
    int from = Integer.MAX_VALUE;
    for (int at = 0; at < now.traces().size(); at++) {
      StripsPicture.Trace old = before.traces().get(at);
      StripsPicture.Trace fresh = now.traces().get(at);
      from = Math.min(from, differs(old.low(), fresh.low()));
      from = Math.min(from, differs(old.high(), fresh.high()));
      from = Math.min(from, differs(old.mean(), fresh.mean()));
      from = Math.min(from, differs(old.edge(), fresh.edge()));
    }
    for (int at = 0; at < now.bands().size(); at++) {
      from = Math.min(from, differs(before.bands().get(at).low(), now.bands().get(at).low()));
      from = Math.min(from, differs(before.bands().get(at).high(), now.bands().get(at).high()));
    }
    for (int at = 0; at < now.behind().size(); at++) {
      from = Math.min(from, differs(before.behind().get(at), now.behind().get(at)));
    }
    return from;
  }

  /** Levels with where they stand; a scale that has moved moves them. */
  private static List<String> levels(Strip strip) {
    return strip.levels().stream()
        .map(
            level ->
                level.place()
                    + " "
                    + level.text()
                    + " "
                    + level.kind()
                    + " "
                    + level.fromMs()
                    + " "
                    + level.untilMs())
        .toList();
  }

  private static int differs(float[] one, float[] other) {
    int both = Math.min(one.length, other.length);
    int at = java.util.Arrays.mismatch(one, 0, both, other, 0, both);
    return at >= 0 ? at : one.length == other.length ? Integer.MAX_VALUE : both;
  }
}
