package firstamp.session;

import firstamp.model.JobSheet;
import java.util.ArrayList;
import java.util.List;

/** What must be known about a real set before the switch may close. */
public final class Questions {
  /** No path round the switch. */
  public static final String FLOATING_SUPPLY = "floating-supply";

  /** No point clipped to can pass 60 V. */
  public static final String ABOVE_60 = "above-60";

  /** Go on without a fuse on the sheet. */
  public static final String NO_FUSE = "no-fuse";

  /** Every answer that a headless run takes; what is not asked is ignored. */
  public static final List<String> ANSWERS =
      List.of(
          FLOATING_SUPPLY,
          ABOVE_60,
          NO_FUSE,
          "lifted",
          "no-cold-check",
          "tape-out",
          "hook-up",
          "speaker-off");

  private Questions() {}

  /** The questions that this sheet raises, in the order in which they are asked. */
  public static List<String> about(JobSheet effective) {
    List<String> ids = new ArrayList<>();
    if (!"battery".equals(effective.supply().kind())) {
      ids.add(FLOATING_SUPPLY);
    }
    ids.add(ABOVE_60);
    if (effective.supply().fuseA() == null) {
      ids.add(NO_FUSE);
    }
    return ids;
  }

  /** The question in words, for people without a window. */
  public static String words(String id) {
    return switch (id) {
      case FLOATING_SUPPLY ->
          "Is there no path round the switch? The metal link between the bench supply's black and earth terminals is off, an"
              + " ohmmeter from black to the earth pin reads open, nothing earthed is on the chassis, the batteries are out.";
      case ABOVE_60 -> "Can no point that is clipped to pass 60 V, also when one thing fails?";
      case NO_FUSE -> "The sheet names no fuse. Go on without one?";
      default -> id;
    };
  }
}
