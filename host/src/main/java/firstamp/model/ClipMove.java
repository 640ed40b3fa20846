package firstamp.model;

/**
 * What the person does with the roving clip and with the contacts of the signal path.
 *
 * @param act what is done
 * @param name of the point or contact; empty where the act has none
 * @param mode of the set's switches; null = it is not given, or there is one only
 * @param input that looks; null where the act has none, or it is not given
 * @param levelDbv read off another meter, for {@link Act#TYPED} alone
 */
public record ClipMove(Act act, String name, String mode, ClipInput input, Double levelDbv)
    implements Happening {

  /** Lowest level that is taken, dBV. */
  public static final double LOWEST_DBV = -200;

  /** Highest level that is taken, dBV. */
  public static final double HIGHEST_DBV = 60;

  /** What is done. */
  public enum Act {
    /** The clip is held on a point. */
    HELD("held"),
    /** A contact has been worked once; the level behind it follows. */
    STROKE("worked"),
    /** The clip rests behind a contact that is about to be tapped. */
    RESTING("resting"),
    /** It is being tapped and flexed. */
    TOUCHED("tapping"),
    /** It is left alone again. */
    LEFT("left"),
    /** The clip is off, the strokes or the taps are over. */
    OFF("off"),
    /** The signal is there, without a figure. */
    THERE("there"),
    /** The signal is gone, without a figure. */
    GONE("gone"),
    /** A level read off another meter. */
    TYPED("typed"),
    /** The last observation is taken back. */
    BACK("taken-back"),
    /** A contact or joint was mended. */
    MENDED("mended");

    private final String id;

    Act(String id) {
      this.id = id;
    }

    /** Identifier in the log and in JSON lines. */
    public String id() {
      return id;
    }
  }

  /** Checks that nothing needed is missing. */
  public ClipMove {
    if (act == null || name == null) {
      throw new IllegalArgumentException("a move of the clip without act or name");
    }
    if ((act == Act.TYPED) != (levelDbv != null)) {
      throw new IllegalArgumentException("level " + levelDbv + " with act " + act.id());
    }
    if (levelDbv != null && !(levelDbv >= LOWEST_DBV && levelDbv <= HIGHEST_DBV)) {
      throw new IllegalArgumentException(
          "level " + levelDbv + " dBV, expected " + LOWEST_DBV + " to " + HIGHEST_DBV);
    }
  }

  /** An act without a name. */
  public static ClipMove of(Act act) {
    return new ClipMove(act, "", null, null, null);
  }

  /** An act at a point or contact. */
  public static ClipMove at(Act act, String name, String mode, ClipInput input) {
    return new ClipMove(act, name, mode, input, null);
  }

  /** A level that was read off another meter. */
  public static ClipMove typed(String point, String mode, double levelDbv) {
    return new ClipMove(Act.TYPED, point, mode, null, levelDbv);
  }

  @Override
  public String kind() {
    return switch (act) {
      case STROKE, RESTING, TOUCHED, LEFT, MENDED -> CONTACT;
      default -> CLIP;
    };
  }

  /** What a clip on its way is on is no figure of the set. */
  @Override
  public boolean parts() {
    return false;
  }

  /**
   * Whether a clip has left its usual place (true) or is back (false) from now on; null = it stays
   * where it is.
   */
  public Boolean roves() {
    return switch (act) {
      case HELD, STROKE, RESTING -> true;
      case OFF -> false;
      default -> null;
    };
  }
}
