package firstamp.emulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.emulate.box.Box;
import firstamp.emulate.box.BoxInput;
import firstamp.emulate.box.BoxKind;
import firstamp.emulate.box.BoxText;
import firstamp.emulate.box.DrawnBox;
import firstamp.emulate.probe.Memory;
import firstamp.emulate.probe.ZeroBand;
import firstamp.emulate.wave.CsvLine;
import firstamp.emulate.wave.FrontEndFile;
import firstamp.model.samples.Channel;
import firstamp.protocol.values.ChannelScale;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The drawn boxes against the parts list, and what a calibration leaves of their errors. */
final class SolderedBoxTest {
  private static final Path PARTS = Path.of("..", "firmware-protocol", "hardware", "parts.csv");
  private static final int BOXES = 500;

  /** Every tolerance that the table takes from the parts list is there, with that figure. */
  @Test
  void theTableSaysWhatThePartsListSays() throws Exception {
    Map<String, String> tolerances = new HashMap<>();
    for (String line : Files.readAllLines(PARTS)) {
      List<String> fields = CsvLine.fields(line);
      tolerances.put(fields.get(0), fields.get(4).replace(" %", "") + "|" + fields.get(3));
    }
    int compared = 0;
    for (String line : table()) {
      String[] fields = line.split(",", 7);
      double limit = Double.parseDouble(fields[2]);
      if (!fields[6].startsWith("parts.csv: ") || limit == 0) {
        continue;
      }
      String listed = tolerances.get(fields[0].replaceFirst("^(U\\d+)[B-D]$", "$1A"));
      assertThat(listed).as(fields[0] + " is in the parts list").isNotNull();
      compared++;
      if (fields[6].startsWith("parts.csv: offset ")) {
        double micros = limit * 1e6;
        String offset =
            micros < 100
                ? String.format(java.util.Locale.ROOT, "offset %.0f uV or less", micros)
                : String.format(java.util.Locale.ROOT, "offset %.1f mV or less", micros / 1000);
        assertThat(listed).as(fields[0]).contains(offset);
      } else {
        assertThat(Double.parseDouble(listed.split("\\|")[0]) / 100).as(fields[0]).isEqualTo(limit);
      }
    }
    assertThat(compared).isGreaterThan(50);
  }

  private static List<String> table() throws Exception {
    try (var in = DrawnBox.class.getResourceAsStream("soldered.csv")) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return text.lines().skip(1).toList();
    }
  }

  @Test
  void theSameSeedGivesTheSameBoxAndAnotherOneAnother() {
    assertThat(Box.of(BoxKind.SOLDERED, 7)).isEqualTo(Box.of(BoxKind.SOLDERED, 7));
    assertThat(Box.of(BoxKind.SOLDERED, 7)).isNotEqualTo(Box.of(BoxKind.SOLDERED, 8));
    assertThat(Box.of(BoxKind.NEW, 7).kept()).isNull();
    assertThat(Box.of(BoxKind.NEW, 7).inputs()).isEqualTo(Box.of(BoxKind.SOLDERED, 7).inputs());
    assertThat(Box.of(BoxKind.IDEAL, 7)).isEqualTo(Box.ideal());
  }

  /**
   * Limits by hand from the parts list. Gain of V: reference 0.1 %, two pairs of 0.1 % (0.2 % in
   * all), converter 2 counts of 1024: 0.5 %. Zero of I: pedestal 19.9; 0.60 (5 V, 3 %), 0.20 (R27),
   * 0.82 (U5), 0.96 (difference stage), 0.38 (U7A), 2 (converter): 5.0 either way; drawn together
   * they use most of it.
   */
  @Test
  void boxesLieWithinTheLimitsAndUseThem() {
    double widestGain = 0;
    double lowestZero = 99;
    double highestZero = 0;
    for (long seed = 1; seed <= BOXES; seed++) {
      DrawnBox box = DrawnBox.of(seed, 0, 0);
      ChannelScale v = box.assembled().get(Channel.V.ordinal()).scale();
      widestGain = Math.max(widestGain, Math.abs(61.594e6 / 1024 / v.valuePerCount() - 1));
      double zero = box.assembled().get(Channel.I.ordinal()).counts(0);
      lowestZero = Math.min(lowestZero, zero);
      highestZero = Math.max(highestZero, zero);
      assertThat(Math.abs(box.clockShare())).isLessThanOrEqualTo(0.005);
    }
    assertThat(widestGain).isBetween(0.003, 0.0051);
    assertThat(lowestZero).isBetween(14.9, 17.0);
    assertThat(highestZero).isBetween(22.8, 24.9);
  }

  /**
   * The band of a new box holds what its parts allow at 10 to 40 C and a year old, worst case, and
   * is at most a good count wider: I 14.0 to 25.8, J 12.1 to 29.7, V 7.7 to 12.3 counts (sums over
   * the rows of the table, by hand).
   */
  @Test
  void theBandOfANewBoxIsWhatItsPartsAllow() throws Exception {
    for (Channel channel : new Channel[] {Channel.I, Channel.J, Channel.V}) {
      double centre = 0;
      double either = 0;
      for (String line : table()) {
        String[] fields = line.split(",", 7);
        double limit = Double.parseDouble(fields[2]);
        limit += 15 * Double.parseDouble(fields[3]) + Double.parseDouble(fields[4]);
        for (String effect : fields[5].split(" ")) {
          if (effect.startsWith(channel + ":zero=")) {
            double factor = Double.parseDouble(effect.substring(effect.indexOf('=') + 1));
            centre += Double.parseDouble(fields[1]) * factor;
            either += limit * Math.abs(factor);
          }
        }
      }
      ZeroBand band = ZeroBand.of(new Memory(), channel);
      assertThat(centre - either - band.lowestCounts()).as("%s", channel).isBetween(0.0, 1.1);
      assertThat(band.highestCounts() - centre - either).as("%s", channel).isBetween(0.0, 1.4);
    }
  }

  /** Without drift, all that is left is the meter, the bow and the noise of two means. */
  @Test
  void aCalibrationTakesTheTolerancesOut() {
    double before = 0;
    double after = 0;
    for (long seed = 1; seed <= BOXES; seed++) {
      DrawnBox drawn = DrawnBox.of(seed, 0, 0);
      Box box = drawn.calibrated();
      BoxInput rail = box.input(Channel.R1);
      double counts = rail.counts(9.137e6);
      double kept = box.kept().scales().get(Channel.R1.ordinal()).valueAt(counts) / 1e6;
      double typed = 9.137 * (1 + drawn.bench().voltsShare());
      assertThat(kept).as("seed " + seed).isCloseTo(typed, within(0.003));
      before =
          Math.max(before, Math.abs(ChannelScale.nominal().get(3).valueAt(counts) / 1e6 - 9.137));
      after = Math.max(after, Math.abs(kept - 9.137));
    }
    assertThat(before).as("volts off, never calibrated").isGreaterThan(0.25);
    assertThat(after).as("volts off, calibrated").isLessThan(0.008 * 9.137 + 0.003);
  }

  /** What the front-end file says comes back as the same box. */
  @Test
  void aBoxComesBackFromItsText() throws Exception {
    for (BoxKind kind : BoxKind.values()) {
      Box box = Box.of(kind, 3);
      Box read = FrontEndFile.parse("{" + BoxText.members(box) + "}", "f", 12).box();
      assertThat(read.clockShare()).isCloseTo(box.clockShare(), within(1e-8));
      for (Channel channel : Channel.values()) {
        BoxInput one = box.input(channel);
        BoxInput two = read.input(channel);
        assertThat(two.scale()).isEqualTo(one.scale());
        double value = 0.3 * one.scale().full();
        assertThat(two.counts(value)).isCloseTo(one.counts(value), within(1e-5));
        if (Double.isInfinite(one.lowestCounts())) {
          assertThat(two.lowestCounts()).isEqualTo(one.lowestCounts());
        } else {
          assertThat(two.lowestCounts()).isCloseTo(one.lowestCounts(), within(1e-5));
        }
      }
      if (box.kept() == null) {
        assertThat(read.kept()).isNull();
      } else {
        assertThat(read.kept().scales()).isEqualTo(box.kept().scales());
        assertThat(read.kept().gainUncertaintyE5()).isEqualTo(box.kept().gainUncertaintyE5());
        assertThat(read.kept().zeroUncertaintyHundredths())
            .isEqualTo(box.kept().zeroUncertaintyHundredths());
      }
    }
  }
}
