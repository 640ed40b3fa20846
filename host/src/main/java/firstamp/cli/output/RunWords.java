package firstamp.cli.output;

import firstamp.model.ClipMove;
import firstamp.model.Happening;
import firstamp.model.OffCause;
import firstamp.model.text.Worded;
import java.util.Locale;

/** Words of the command line for what happened in a run. */
final class RunWords {
  private RunWords() {}

  /** What was done. */
  static Worded happened(Happening what) {
    if (what instanceof ClipMove move) {
      return clip(move);
    }
    if (what instanceof Happening.SetChanged) {
      return Said.of("happened.changed", what.words());
    }
    if (what instanceof Happening.LoadStarted) {
      return Said.of("happened.started", what.words());
    }
    if (what instanceof Happening.Recording recording) {
      return Said.of("happened.record-" + recording.state().id());
    }
    if (what instanceof Happening.ModeSet mode) {
      return Said.of("happened.mode", Said.of("mode." + mode.mode().id()));
    }
    if (what instanceof Happening.ClipsRead read) {
      return Said.of("happened.clips-" + clips(read));
    }
    if (what instanceof Happening.Step step) {
      Object text = step.said() == null ? step.text() : step.said();
      return Said.of("happened.step-" + step.state().id(), step.step(), step.of(), text);
    }
    if (what instanceof Happening.SupplySaid supply && supply.said() != null) {
      return supply.said();
    }
    return Worded.asIs(String.valueOf(what.words()));
  }

  private static String clips(Happening.ClipsRead read) {
    if (read.head()) {
      return read.meter() ? "joined" : "meter-off";
    }
    return read.meter() ? "head-off" : "both-off";
  }

  private static Worded clip(ClipMove move) {
    String key = "clip." + move.act().name().toLowerCase(Locale.ROOT);
    Object name =
        move.mode() == null
            ? String.valueOf(move.name())
            : Said.of("clip.in", move.name(), move.mode());
    return switch (move.act()) {
      case HELD ->
          move.input() == null
              ? Said.of(key, name)
              : Said.of(
                  "clip.held.by",
                  name,
                  Said.of("clip.by." + move.input().name().toLowerCase(Locale.ROOT)));
      case TYPED -> Said.of(key, name, String.valueOf(move.levelDbv()));
      default -> Said.of(key, name);
    };
  }

  /** Who switched off; null where nothing was on (a look that did not let the switch close). */
  static String offBy(OffCause by) {
    return switch (by) {
      case USER -> "user";
      case RULE -> "rule";
      case TIME -> "time";
      case SIGNAL -> "signal";
      case BUTTON, PEDAL -> "button";
      case TRIP, SILENCE -> "trip";
      case CHASSIS -> "chassis";
      case START -> "reset";
      case LOOK -> null;
    };
  }
}
