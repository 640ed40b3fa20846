package firstamp.model.limits;

import firstamp.model.JobSheet;
import firstamp.model.LevelClips;
import firstamp.model.NotWatched;
import firstamp.model.RuleId;
import java.util.ArrayList;
import java.util.List;

/**
 * Which rules a filled sheet lets the program watch, and what it does not, with the reason.
 *
 * <p>Not thread-safe; worked out again each time.
 */
public final class Coverage {
  private static final String NOT_SAID = "not on the sheet";

  /** Why head and hum are not judged. */
  public static final String HEAD_CLIP_OFF = "the head clip is off";

  /** Why head and hum are not judged. */
  public static final String METER_CLIP_OFF = "the meter clip is off";

  private static final String TOO_SHORT = "the set was not on long enough";

  private final JobSheet sheet;
  private final boolean reducedStream;
  private final List<Item> watched = new ArrayList<>();
  private final List<NotWatched> notWatched = new ArrayList<>();

  /**
   * One rule on one rail.
   *
   * @param rule that is watched
   * @param rail 1 to 3, 0 = the supply or no rail
   */
  public record Item(RuleId rule, int rail) {
    /** Like "over-current" or "rail-window 1"; rules about rails name 0 for the supply. */
    public String text() {
      boolean numbered = rule.scope() == RuleId.Scope.RAIL;
      return numbered ? rule.id() + " " + rail : rule.id();
    }
  }

  /**
   * Works it out.
   *
   * @param effective sheet with its defaults filled in
   * @param reducedStream whether only readings come, so that tones cannot be judged
   */
  public Coverage(JobSheet effective, boolean reducedStream) {
    this.sheet = effective;
    this.reducedStream = reducedStream;
    supply();
    for (int input = 1; input <= 3; input++) {
      rail(input);
    }
    offset();
    levels();
    add(RuleId.PROBE_SILENT, 0);
    add(RuleId.NOT_LOGGING, 0);
    add(RuleId.SWITCH_FAILED, 0);
  }

  /** Rules that are watched. */
  public List<Item> items() {
    return List.copyOf(watched);
  }

  /** Rules that are watched, as text. */
  public List<String> watched() {
    return watched.stream().map(Item::text).toList();
  }

  /** What is not watched. */
  public List<NotWatched> notWatched() {
    return List.copyOf(notWatched);
  }

  /** Nothing was clipped to a rail's input. */
  public void noClip(int rail) {
    watched.removeIf(item -> item.rail() == rail);
    notWatched.removeIf(item -> item.what().endsWith(" " + rail));
    notWatched.add(new NotWatched("rail " + rail, "no clip"));
  }

  /** Head and meter, as they were joined when the switch closed: neither is judged alone. */
  public void levelClips(LevelClips joined) {
    if (!joined.head()) {
      drop(RuleId.HEAD_BELOW_METER, HEAD_CLIP_OFF);
      drop(RuleId.HUM, HEAD_CLIP_OFF);
    } else if (!joined.meter()) {
      drop(RuleId.HEAD_BELOW_METER, METER_CLIP_OFF);
      drop(RuleId.HUM, METER_CLIP_OFF);
    }
  }

  /** Whether what is not watched has this reason. */
  public static boolean says(List<NotWatched> gaps, String why) {
    return gaps.stream().anyMatch(gap -> gap.why().equals(why));
  }

  /** A rule never came to be judged: the set was off again before. */
  public void tooShort(RuleId rule, int rail) {
    Item item = new Item(rule, rail);
    if (watched.remove(item)) {
      notWatched.add(new NotWatched(item.text(), TOO_SHORT));
    }
  }

  /** The meter input never showed anything. */
  public void meterQuiet() {
    drop(RuleId.HEAD_BELOW_METER, "the meter stayed quiet: I cannot see your meter");
  }

  /**
   * Without expected decibels the head is judged only while the set records; nobody said that it
   * did.
   */
  public void recordNotSaid() {
    drop(RuleId.HEAD_BELOW_METER, "nobody said that the set records");
  }

  /** The set does not record, as the person entered: rules about the head rest. */
  public void recordOff(RuleId rule) {
    drop(rule, "the set was not recording");
  }

  /** The clip of the meter or of the head was somewhere else. */
  public void clipRoved(RuleId rule) {
    drop(rule, "a clip was being moved");
  }

  /** Hum is taken in pauses, and there were none. */
  public void alwaysSpeech() {
    drop(RuleId.HUM, "the meter showed speech all the time");
  }

  /** No level was measured while the set was on. */
  public void noLevels() {
    drop(RuleId.HEAD_BELOW_METER, TOO_SHORT);
    drop(RuleId.HUM, TOO_SHORT);
  }

  private void drop(RuleId rule, String why) {
    if (watched.removeIf(item -> item.rule() == rule)) {
      notWatched.add(new NotWatched(rule.id(), why));
    }
  }

  private void supply() {
    JobSheet.Limits limits = sheet.limits();
    Double running = limits == null ? null : limits.runningA();
    Double inrush = limits == null ? null : limits.inrushA();
    Double squares = limits == null ? null : limits.i2tA2s();
    if (running != null || inrush != null || squares != null) {
      add(RuleId.OVER_CURRENT, 0);
    }
    missing(running, "running current");
    missing(inrush, "surge current");
    missing(squares, "surge heat");
    add(RuleId.SHORT, 0);
    add(RuleId.NO_DRAW, 0);
    add(RuleId.CURRENT_CREEP, 0);
    add(RuleId.RAIL_WINDOW, 0);
    if (sheet.supply().maxV() != null) {
      add(RuleId.OVER_VOLTAGE, 0);
    }
    add(RuleId.WRONG_POLARITY, 0);
    add(RuleId.INPUT_CLIPPED, 0);
    if (Boolean.FALSE.equals(sheet.supply().look())) {
      notWatched.add(new NotWatched("first look", "turned off on the sheet"));
    }
  }

  private void rail(int input) {
    JobSheet.Rail rail = sheet.rail(input);
    if (rail == null) {
      Double output = RuleId.OUTPUT_OFFSET.settings(sheet).numbers().get("input");
      if (output == null || Math.round(output) != input) {
        notWatched.add(new NotWatched("rail " + input, NOT_SAID));
      }
      return;
    }
    if (rail.nominalV() == null) {
      notWatched.add(new NotWatched("volts of rail " + input, "nominalV is not on the sheet"));
    } else {
      if (Through.of(sheet) == Through.LAMP) {
        notWatched.add(new NotWatched("rail-window " + input, "a lamp is in line"));
      } else {
        add(RuleId.RAIL_WINDOW, input);
        add(RuleId.RAIL_LATE, input);
      }
      add(RuleId.RAIL_UNSTEADY, input);
      add(RuleId.WRONG_POLARITY, input);
      add(RuleId.RAIL_NOT_FOLLOWING, input);
      add(RuleId.CLIP_OFF, input);
    }
    add(RuleId.RAIL_CLIMBING, input);
    add(RuleId.INPUT_CLIPPED, input);
    if (rail.overV() == null) {
      notWatched.add(new NotWatched("over-voltage " + input, "overV is not on the sheet"));
    } else {
      add(RuleId.OVER_VOLTAGE, input);
    }
    ripple(rail);
  }

  private void ripple(JobSheet.Rail rail) {
    String number = " " + rail.input();
    boolean rectified = "half".equals(rail.rectifier()) || "full".equals(rail.rectifier());
    if (reducedStream) {
      notWatched.add(new NotWatched("ripple" + number, "only readings come from the probe"));
      return;
    }
    if (rail.rippleMaxVrms() == null) {
      notWatched.add(new NotWatched("ripple" + number, "rippleMaxVrms is not on the sheet"));
    } else {
      add(RuleId.RIPPLE, rail.input());
    }
    if (rectified && rail.capacitanceUf() != null && rail.nominalV() != null) {
      add(RuleId.RIPPLE_TOO_LOW, rail.input());
    } else if (rectified) {
      notWatched.add(
          new NotWatched("ripple-too-low" + number, "capacitanceUf is not on the sheet"));
    }
  }

  private void offset() {
    Double input = RuleId.OUTPUT_OFFSET.settings(sheet).numbers().get("input");
    if (input != null) {
      add(RuleId.OUTPUT_OFFSET, (int) Math.round(input));
    }
  }

  private void levels() {
    if (sheet.levels() == null) {
      notWatched.add(new NotWatched("levels", NOT_SAID));
      return;
    }
    add(RuleId.HEAD_BELOW_METER, 0);
    if (reducedStream) {
      notWatched.add(new NotWatched("hum", "only readings come from the probe"));
    } else {
      needs(RuleId.HUM, "aboveDbv");
    }
  }

  private void missing(Double limit, String what) {
    if (limit == null) {
      notWatched.add(new NotWatched(what, NOT_SAID));
    }
  }

  private void needs(RuleId rule, String number) {
    if (rule.settings(sheet).numbers().containsKey(number)) {
      add(rule, 0);
    } else {
      notWatched.add(new NotWatched(rule.id(), number + " is not on the sheet"));
    }
  }

  private void add(RuleId rule, int rail) {
    Item item = new Item(rule, rail);
    if (rule.settings(sheet).enabled()) {
      watched.add(item);
    } else {
      notWatched.add(new NotWatched(item.text(), "turned off on the sheet"));
    }
  }
}
