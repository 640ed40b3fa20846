package firstamp.emulate.box;

import firstamp.model.samples.Channel;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * One part of the parts list and what its error does to the inputs.
 *
 * @param part its reference in the parts list
 * @param centre by how much the drawn value itself is off the nominal scale
 * @param limit of error at assembly: every value within it is as likely
 * @param perKelvin limit of its drift with temperature
 * @param perYear limit of its drift with age
 * @param effects on the inputs
 * @param source where the figures come from
 */
record Tolerance(
    String part,
    double centre,
    double limit,
    double perKelvin,
    double perYear,
    List<Effect> effects,
    String source) {
  private static final String TABLE = "soldered.csv";
  private static final int FIELDS = 7;

  /** What an error of one changes. */
  enum Kind {
    /** Counts per ampere or volt, share. */
    GAIN,
    /** Counts at 0 A or V. */
    ZERO,
    /** Counts in the middle of the range. */
    BOW,
    /** Lowest counts that an amplifier gives. */
    FLOOR,
    /** The clock, share. */
    CLOCK
  }

  /**
   * One effect.
   *
   * @param kind what it changes
   * @param channel of which input; null for the clock
   * @param factor times the part's error
   */
  record Effect(Kind kind, Channel channel, double factor) {}

  /** The table in the program, in its order. */
  static List<Tolerance> all() {
    try (InputStream in = Tolerance.class.getResourceAsStream(TABLE);
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      return lines.lines().skip(1).map(Tolerance::of).toList();
    } catch (IOException broken) {
      throw new UncheckedIOException("table " + TABLE + " cannot be read", broken);
    }
  }

  private static Tolerance of(String line) {
    String[] fields = line.split(",", FIELDS);
    List<Effect> effects = new ArrayList<>();
    for (String word : fields[5].split(" ")) {
      effects.add(effect(word));
    }
    return new Tolerance(
        fields[0],
        Double.parseDouble(fields[1]),
        Double.parseDouble(fields[2]),
        Double.parseDouble(fields[3]),
        Double.parseDouble(fields[4]),
        List.copyOf(effects),
        fields[6]);
  }

  private static Effect effect(String word) {
    String[] sides = word.split("=", 2);
    String[] names = sides[0].split(":", 2);
    Kind kind = Kind.valueOf(names[names.length - 1].toUpperCase(java.util.Locale.ROOT));
    Channel channel = names.length == 1 ? null : Channel.valueOf(names[0]);
    return new Effect(kind, channel, Double.parseDouble(sides[1]));
  }
}
