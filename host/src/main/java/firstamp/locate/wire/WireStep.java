package firstamp.locate.wire;

import java.util.List;

/** What the person saw, checked or tried about wires of unknown place, in the order it came. */
public sealed interface WireStep {
  /** Whether it is about a wire; what is read at a place alone is about all of them. */
  default boolean concerns(String wire) {
    return wire() == null || wire().equals(wire);
  }

  /** The wire it is about, null = none. */
  default String wire() {
    return null;
  }

  /** The place it is about, null = none. */
  default String place() {
    return null;
  }

  /** The step without its date. */
  default WireStep bare() {
    return this;
  }

  /**
   * A step with the time at which it was made.
   *
   * @param step what was done
   * @param atEpochMs by the computer's clock
   */
  record Dated(WireStep step, long atEpochMs) implements WireStep {
    /** Checks that it is dated once. */
    public Dated {
      if (step instanceof Dated) {
        throw WireRefusals.of("one-date");
      }
    }

    @Override
    public WireStep bare() {
      return step;
    }

    @Override
    public String wire() {
      return step.wire();
    }

    @Override
    public String place() {
      return step.place();
    }
  }

  /** A reason for or against a place. */
  record Clue(String wire, String place, ClueKind kind, boolean fits) implements WireStep {}

  /**
   * A hunch, in words.
   *
   * @param word hardly, perhaps, probably or surely
   */
  record Hunch(String wire, String place, String word) implements WireStep {
    /** By which the odds change. */
    double factor() {
      return switch (word) {
        case "hardly" -> 0.3;
        case "perhaps" -> 1.5;
        case "probably" -> 3;
        case "surely" -> 6;
        default -> throw WireRefusals.of("hunch", word);
      };
    }
  }

  /**
   * Ohms between the free end of a wire and a place, supply off and discharged.
   *
   * @param otherWayOhm leads swapped, null = not read
   */
  record WireOhms(String wire, String place, double ohm, Double otherWayOhm) implements WireStep {
    /** Checks the ohms. */
    public WireOhms {
      mustBeOhms(ohm);
      if (otherWayOhm != null) {
        mustBeOhms(otherWayOhm);
      }
    }

    /** The lower of both ways. */
    double lowerOhm() {
      return otherWayOhm == null ? ohm : Math.min(ohm, otherWayOhm);
    }
  }

  /** Ohms between a place and the chassis, supply off and discharged. */
  record PlaceOhms(String place, double ohm) implements WireStep {
    /** Checks the ohms. */
    public PlaceOhms {
      mustBeOhms(ohm);
    }
  }

  /** A junction between the free end and the chassis, volts both ways; null = open. */
  record Diode(String wire, Double forwardV, Double backwardV) implements WireStep {}

  /** Ohms between the free end and the chassis that climb as a capacitor charges. */
  record Swing(String wire, double firstOhm, double lastOhm, double seconds) implements WireStep {
    /** Checks the ohms. */
    public Swing {
      mustBeOhms(firstOhm);
      mustBeOhms(lastOhm);
      if (!(seconds > 0 && seconds <= 3600)) {
        throw WireRefusals.of("seconds", seconds);
      }
    }
  }

  /**
   * Few ohms from a wire to the chassis that are no short.
   *
   * @param note what it is: a winding, a resistor
   */
  record Known(String wire, String note) implements WireStep {
    /** Checks the note. */
    public Known {
      if (note == null || note.isBlank()) {
        throw WireRefusals.of("other-end", wire);
      }
    }
  }

  /** Volts of the insulated end under power, alone and with 10 kohm to the chassis. */
  record SourceTest(String wire, double aloneV, double loadedV) implements WireStep {}

  /** Volts of a place under power, nothing joined. */
  record PlaceVolts(String place, double volts) implements WireStep {}

  /**
   * A power-up with one wire joined.
   *
   * @param powerUp number in the log, null = none
   * @param figures that became better, by name
   */
  record Trial(
      String wire, String place, Integer powerUp, TrialVerdict verdict, List<String> figures)
      implements WireStep {
    /** Copies the list. */
    public Trial {
      figures = List.copyOf(figures);
    }
  }

  /** A note that a wire was moved. */
  record Moved(String wire, String place, String note) implements WireStep {}

  /** A photograph by path and SHA-256. */
  record Photograph(String wire, String path, String sha256) implements WireStep {}

  private static void mustBeOhms(double ohm) {
    if (!(ohm >= 0 && ohm <= 1e9)) {
      throw WireRefusals.of("ohm", ohm);
    }
  }
}
