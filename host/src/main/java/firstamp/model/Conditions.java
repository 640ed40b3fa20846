package firstamp.model;

import java.util.List;
import java.util.Locale;

/**
 * How a set is left before it gets current. Null = not given.
 *
 * @param load what is in the recorder, or on the output
 * @param volume position of the volume control
 * @param function position of the function switch
 */
public record Conditions(Load load, Volume volume, Function function) {
  /** Nothing was given. */
  public static final Conditions UNSAID = new Conditions(null, null, null);

  /** Tape of a recorder, or what the output works into. */
  public enum Load {
    /** No tape is in, the record lock is held in. */
    NO_TAPE,
    /** A blank tape. */
    BLANK_TAPE,
    /** A tape that somebody wants to keep. */
    OWN_TAPE,
    /** No loudspeaker is joined. */
    SPEAKER_OFF,
    /** A resistor in place of the loudspeaker. */
    DUMMY_LOAD,
    /** A loudspeaker is joined. */
    SPEAKER_ON;

    /** Name in files. */
    public String id() {
      return Conditions.id(this);
    }

    /** What can be given for a kind of set. */
    public static List<Load> of(String setKind) {
      return "recorder".equals(setKind)
          ? List.of(NO_TAPE, BLANK_TAPE, OWN_TAPE)
          : List.of(SPEAKER_OFF, DUMMY_LOAD, SPEAKER_ON);
    }
  }

  /** Volume control. */
  public enum Volume {
    /** Turned down. */
    DOWN,
    /** About the middle. */
    MIDDLE,
    /** Turned up. */
    UP;

    /** Name in files. */
    public String id() {
      return Conditions.id(this);
    }
  }

  /** Function switch. */
  public enum Function {
    /** Stopped. */
    STOP,
    /** Play. */
    PLAY,
    /** Record. */
    RECORD,
    /** Radio. */
    RADIO,
    /** Record player. */
    PHONO,
    /** Line or tape input. */
    LINE;

    /** Name in files. */
    public String id() {
      return Conditions.id(this);
    }

    /** What can be given for a kind of set. */
    public static List<Function> of(String setKind) {
      return "recorder".equals(setKind) ? List.of(STOP, PLAY, RECORD) : List.of(RADIO, PHONO, LINE);
    }
  }

  private static String id(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Whether anything was given. */
  public boolean said() {
    return load != null || volume != null || function != null;
  }

  /** Whether a tape that is worth something may be in the machine. */
  public boolean tapeAtRisk() {
    return load == null || load == Load.OWN_TAPE;
  }
}
