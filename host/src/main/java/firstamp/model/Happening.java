package firstamp.model;

import firstamp.model.text.Worded;

/**
 * What the person did to the set or reported of its state, and where a mode or a step began: all
 * that rules and figures have to know of it. A mark is a note and says nothing to them.
 *
 * <p>Part of the stream ({@link ProbeEvent.Happened}), so a replay gives the same result.
 */
public sealed interface Happening
    permits ClipMove,
        Happening.Recording,
        Happening.ModeSet,
        Happening.Step,
        Happening.SetChanged,
        Happening.LoadStarted,
        Happening.ClipsRead,
        Happening.SupplySaid {
  /** Kind of a moved clip. */
  String CLIP = "clip";

  /** Kind of a contact that was worked, tapped or mended. */
  String CONTACT = "contact";

  /** Identifier of the kind in the log and in JSON lines. */
  String kind();

  /** Words of it, for a table or a strip; null = none. */
  default String words() {
    return null;
  }

  /** Whether it separates what comes before and after it. */
  default boolean parts() {
    return true;
  }

  /** Whether the set records; a set that plays gives its head nothing to do. */
  record Recording(RecordState state) implements Happening {
    @Override
    public String kind() {
      return "record-" + state.id();
    }

    @Override
    public String words() {
      return state == RecordState.UNKNOWN ? "record or playback" : "record " + state.id();
    }
  }

  /** Another mode of watching. */
  record ModeSet(Mode mode) implements Happening {
    @Override
    public String kind() {
      return "mode";
    }

    @Override
    public String words() {
      return "mode: " + mode.id();
    }
  }

  /**
   * A step of a staged bring-up.
   *
   * @param step from 1; 0 = all of them
   * @param of how many
   * @param state how it ended
   * @param text volts and limit, or what was seen, in English, as the log keeps it
   * @param said the same before any language; null = it was read from a log
   */
  record Step(int step, int of, StepState state, String text, Worded said) implements Happening {
    /** As it was read from a log. */
    public Step(int step, int of, StepState state, String text) {
      this(step, of, state, text, null);
    }

    /** As it happens. */
    public static Step now(int step, int of, StepState state, Worded said) {
      return new Step(step, of, state, said.english(), said);
    }

    @Override
    public String kind() {
      return "step";
    }

    @Override
    public String words() {
      return "step " + step + " of " + of + " " + state.id() + ": " + text;
    }
  }

  /** Something was changed on the set: before and after are kept separate. */
  record SetChanged(String text) implements Happening {
    @Override
    public String kind() {
      return "change";
    }

    @Override
    public String words() {
      return text;
    }
  }

  /** A motor or another load was switched on. */
  record LoadStarted(String text) implements Happening {
    @Override
    public String kind() {
      return "start";
    }

    @Override
    public String words() {
      return text;
    }
  }

  /**
   * The probe has read the clips of head and meter back, before switching on or after switching
   * off. Absent from a power-up in which both are joined all the time.
   */
  record ClipsRead(boolean head, boolean meter) implements Happening {
    /** As the probe has found them. */
    public static ClipsRead of(LevelClips found) {
      return new ClipsRead(found.head(), found.meter());
    }

    /** What is joined. */
    public LevelClips clips() {
      return new LevelClips(head, meter);
    }

    @Override
    public String kind() {
      return "clips-read";
    }

    @Override
    public boolean parts() {
      return false;
    }
  }

  /**
   * What a bench supply on a wire did not do.
   *
   * @param text in English, as the log keeps it
   * @param said the same before any language; null = it was read from a log
   */
  record SupplySaid(String text, Worded said) implements Happening {
    /** As it was read from a log. */
    public SupplySaid(String text) {
      this(text, null);
    }

    /** As it happens. */
    public static SupplySaid now(Worded said) {
      return new SupplySaid(said.english(), said);
    }

    @Override
    public String kind() {
      return "supply";
    }

    @Override
    public String words() {
      return text;
    }

    @Override
    public boolean parts() {
      return false;
    }
  }

  /** Whether the set records. */
  enum RecordState {
    /** It records. */
    ON,
    /** It plays, or does neither. */
    OFF,
    /** Nobody has entered it. */
    UNKNOWN;

    /** Identifier in the log and in JSON lines. */
    public String id() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  /** How a set that is on is watched. */
  enum Mode {
    /** By the limits of the sheet, with somebody there. */
    USUAL("usual"),
    /** Hands or a tool are in the set. */
    HANDS_IN("hands-in"),
    /** Nobody watches. */
    SOAK("soak"),
    /** Nobody watches, and the time is over. */
    SOAK_OVER("soak-over");

    private final String id;

    Mode(String id) {
      this.id = id;
    }

    /** Identifier in the log and in JSON lines. */
    public String id() {
      return id;
    }
  }

  /** State of a step. */
  enum StepState {
    /** It begins. */
    BEGUN("begun"),
    /** Something was seen; the step continues. */
    SEEN("seen"),
    /** It is over, the next one may begin. */
    SETTLED("settled"),
    /** The supply was switched off because of it. */
    STOPPED("stopped"),
    /** All steps are done. */
    DONE("done");

    private final String id;

    StepState(String id) {
      this.id = id;
    }

    /** Identifier in the log and in JSON lines. */
    public String id() {
      return id;
    }
  }
}
