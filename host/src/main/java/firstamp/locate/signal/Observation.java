package firstamp.locate.signal;

import firstamp.model.text.Numbers;
import firstamp.model.text.Worded;
import java.util.List;
import java.util.stream.Collectors;

/** What the person measured or saw along a path, in the order it came. */
public sealed interface Observation {
  /** In a few words, for a list of what was done. */
  Worded words();

  /**
   * A level at a point.
   *
   * @param point measured
   * @param mode of the switches, null = the usual one
   * @param from the point that was driven, null = the mode's source
   * @param levelDbv read
   * @param uncertaintyDb of the reading, one standard deviation
   * @param atMost the input shows no less: the level is there or below
   */
  record Level(
      String point, String mode, String from, double levelDbv, double uncertaintyDb, boolean atMost)
      implements Observation {
    /** A level that was read. */
    public Level(String point, String mode, String from, double levelDbv, double uncertaintyDb) {
      this(point, mode, from, levelDbv, uncertaintyDb, false);
    }

    /** Checks the figures. */
    public Level {
      if (!(levelDbv >= -200 && levelDbv <= 60)) {
        throw PathWords.refusal("level", point, levelDbv);
      }
      if (!(uncertaintyDb >= 0.01 && uncertaintyDb <= 20)) {
        throw PathWords.refusal("uncertainty", point, uncertaintyDb);
      }
    }

    @Override
    public Worded words() {
      return PathWords.of(atMost ? "step.at-most" : "step.level", switched(point, mode), levelDbv);
    }
  }

  /**
   * The signal is there, or gone, without a figure.
   *
   * @param point measured
   * @param mode of the switches, null = the usual one
   * @param from the point that was driven, null = the mode's source
   * @param there whether it sounds as it should
   */
  record Heard(String point, String mode, String from, boolean there) implements Observation {
    @Override
    public Worded words() {
      return PathWords.of(there ? "step.there" : "step.gone", switched(point, mode));
    }
  }

  /**
   * A contact worked several times, the level read after each stroke.
   *
   * @param joint the contact
   * @param levelsDb after each stroke
   */
  record Strokes(String joint, List<Double> levelsDb) implements Observation {
    /** Copies the levels. */
    public Strokes {
      levelsDb = List.copyOf(levelsDb);
    }

    @Override
    public Worded words() {
      return PathWords.of("step.worked", joint, levelsDb.size(), decibels(levelsDb));
    }
  }

  /**
   * A place tapped and flexed with an insulated stick while the level is followed.
   *
   * @param joint that was touched
   * @param quietDb levels while nothing was touched
   * @param touchedDb levels while it was
   */
  record Taps(String joint, List<Double> quietDb, List<Double> touchedDb) implements Observation {
    /** Copies the levels. */
    public Taps {
      quietDb = List.copyOf(quietDb);
      touchedDb = List.copyOf(touchedDb);
    }

    @Override
    public Worded words() {
      return PathWords.of("step.tapped", joint, decibels(touchedDb));
    }
  }

  /**
   * Something was mended; what was measured before it no longer counts.
   *
   * @param joint that was mended
   */
  record Mended(String joint) implements Observation {
    @Override
    public Worded words() {
      return PathWords.of("step.mended", joint);
    }
  }

  private static String switched(String point, String mode) {
    return mode == null ? point : point + " (" + mode + ")";
  }

  private static String decibels(List<Double> levels) {
    return levels.stream().map(Numbers::text).collect(Collectors.joining(", ")) + " dBV";
  }
}
