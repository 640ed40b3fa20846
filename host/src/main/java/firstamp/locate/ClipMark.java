package firstamp.locate;

import java.util.List;

/**
 * What the person does with the roving clip and with the joints, as a mark of the power-up.
 *
 * <p>The marks are kept in the log with their times, so that a replay takes the same levels out of
 * the same windows.
 *
 * @param act what is done
 * @param name of the point or joint; empty where the act has none
 * @param mode of the switches, null = the path has one
 * @param input that looks, null where the act has none
 */
public record ClipMark(Act act, String name, String mode, ClipInput input) {
  static final String TYPED_SEPARATOR = ": dBV ";

  /** What is done. */
  public enum Act {
    /** The clip is held on a point. */
    HELD("clip on"),
    /** A joint has been worked once; the level behind it follows. */
    STROKE("worked once:"),
    /** The clip rests behind a joint that is about to be tapped. */
    RESTING("to be tapped:"),
    /** It is being tapped and flexed. */
    TOUCHED("tapping"),
    /** It is left alone again. */
    LEFT("tapping ended"),
    /** The clip is off, the strokes or the taps are over. */
    OFF("clip off"),
    /** The signal is there, without a figure. */
    THERE("signal there at"),
    /** The signal is gone, without a figure. */
    GONE("signal gone at"),
    /** A level read off another meter; the figure follows behind a colon. */
    TYPED("level typed at"),
    /** The last observation is taken back. */
    BACK("taken back"),
    /** A joint was mended. */
    MENDED("mended:");

    private final String words;

    Act(String words) {
      this.words = words;
    }
  }

  /** An act without a name. */
  public static ClipMark of(Act act) {
    return new ClipMark(act, "", null, null);
  }

  /** The mark of a level that was read off another meter. */
  public static String typed(String point, String mode, double levelDbv) {
    return new ClipMark(Act.TYPED, point, mode, null).text() + TYPED_SEPARATOR + levelDbv;
  }

  /**
   * Whether a mark says that a clip leaves its usual place (true) or is back (false); null = it is
   * about something else.
   */
  public static Boolean roves(String text) {
    for (Act act : List.of(Act.HELD, Act.STROKE, Act.RESTING)) {
      if (text.startsWith(act.words + " ")) {
        return true;
      }
    }
    return text.equals(Act.OFF.words) ? (Boolean) false : null;
  }

  /** The text of the mark. */
  public String text() {
    StringBuilder text = new StringBuilder(act.words);
    if (!name.isEmpty()) {
      text.append(' ').append(name);
    }
    if (mode != null) {
      text.append(", switched to ").append(mode);
    }
    if (input != null) {
      text.append(", ").append(input.words());
    }
    return text.toString();
  }
}
