package firstamp.run.questions;

import firstamp.model.Conditions;
import firstamp.model.JobSheet;
import firstamp.model.text.Worded;
import java.util.ArrayList;
import java.util.List;

/** What must be known about a real set before the switch may close. */
public final class Questions {
  /** No path round the switch. */
  public static final String FLOATING_SUPPLY = "floating-supply";

  /** What is joined: nothing earthed on it, batteries out, clips where they belong. */
  public static final String HOOK_UP = "hook-up";

  /** No point clipped to can pass 60 V. */
  public static final String ABOVE_60 = "above-60";

  /** Go on without a fuse on the sheet. */
  public static final String NO_FUSE = "no-fuse";

  /** The owner's tape is out. */
  public static final String TAPE_OUT = "tape-out";

  /** Loudspeaker off, volume down. */
  public static final String SPEAKER_OFF = "speaker-off";

  /** Every answer that a headless run takes; what is not asked is ignored. */
  public static final List<String> ANSWERS =
      List.of(
          FLOATING_SUPPLY,
          ABOVE_60,
          NO_FUSE,
          "lifted",
          "no-cold-check",
          TAPE_OUT,
          HOOK_UP,
          SPEAKER_OFF);

  private Questions() {}

  /** The questions that a run without a window answers beforehand, in their order. */
  public static List<String> about(JobSheet effective) {
    List<String> ids = new ArrayList<>();
    if (!battery(effective)) {
      ids.add(FLOATING_SUPPLY);
    }
    ids.add(ABOVE_60);
    if (effective.supply().fuseA() == null) {
      ids.add(NO_FUSE);
    }
    if (recorder(effective)) {
      ids.add(TAPE_OUT);
    }
    return ids;
  }

  /** Whether it erases what is recorded on a tape. */
  public static boolean recorder(JobSheet effective) {
    return "recorder".equals(effective.set().kind());
  }

  /** Whether a loudspeaker is connected to it. */
  public static boolean speaks(JobSheet effective) {
    String kind = effective.set().kind();
    return "amplifier".equals(kind) || "receiver".equals(kind);
  }

  private static boolean battery(JobSheet effective) {
    return "battery".equals(effective.supply().kind());
  }

  /** The same for a person in front of a window, each with its life; hands come last. */
  static List<Asked> lives(JobSheet effective, String label, String port, Conditions conditions) {
    String set = effective.set().name();
    String joined = set + " " + hookUp(effective, label, port);
    List<Asked> asked = new ArrayList<>();
    if (!battery(effective)) {
      asked.add(new Asked(FLOATING_SUPPLY, Asked.Life.BENCH, supply(effective)));
    }
    if (effective.supply().fuseA() == null) {
      asked.add(new Asked(NO_FUSE, Asked.Life.BENCH, set));
    }
    asked.add(new Asked(ABOVE_60, Asked.Life.HOOK_UP, joined));
    asked.add(new Asked(HOOK_UP, Asked.Life.HOOK_UP, joined));
    if (recorder(effective) && conditions.tapeAtRisk()) {
      asked.add(new Asked(TAPE_OUT, tapeLife(conditions), joined));
    }
    if (speaks(effective) && loud(conditions)) {
      asked.add(new Asked(SPEAKER_OFF, Asked.Life.HOOK_UP, joined));
    }
    asked.add(new Asked(Asking.HANDS_OUT, Asked.Life.BODY, set));
    return asked;
  }

  /** RECORD erases: with a tape of somebody, or on record, it is asked each time. */
  private static Asked.Life tapeLife(Conditions conditions) {
    boolean each =
        conditions.load() == Conditions.Load.OWN_TAPE
            || conditions.function() == Conditions.Function.RECORD;
    return each ? Asked.Life.BODY : Asked.Life.HOOK_UP;
  }

  private static boolean loud(Conditions conditions) {
    boolean speaker = conditions.load() == null || conditions.load() == Conditions.Load.SPEAKER_ON;
    return speaker || conditions.volume() != Conditions.Volume.DOWN;
  }

  /** The supply, as far as a sheet tells one from another. */
  private static String supply(JobSheet effective) {
    JobSheet.Supply supply = effective.supply();
    return String.join(
        " ",
        String.valueOf(supply.kind()),
        String.valueOf(supply.probeSits()),
        String.valueOf(supply.nominalV()),
        String.valueOf(supply.limitA()));
  }

  /** Clips, source and wires: a text that changes with them. */
  private static String hookUp(JobSheet effective, String label, String port) {
    StringBuilder text = new StringBuilder();
    for (JobSheet.Rail rail : effective.rails()) {
      text.append(rail.input()).append(rail.name()).append(rail.nominalV());
    }
    text.append(effective.levels() != null)
        .append(effective.path())
        .append(effective.unknownWires())
        .append(label == null ? "" : label.strip())
        .append(port);
    return Integer.toHexString(text.toString().hashCode());
  }

  /** The question in words, for people without a window. */
  public static Worded words(String id) {
    return List.of(FLOATING_SUPPLY, ABOVE_60, NO_FUSE, TAPE_OUT).contains(id)
        ? Worded.of("firstamp.run.questions", id)
        : Worded.asIs(id);
  }
}
