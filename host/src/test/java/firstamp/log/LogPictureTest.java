package firstamp.log;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.log.stream.Overview;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import firstamp.model.samples.SamplePlan;
import java.util.List;
import org.hipparchus.stat.descriptive.DescriptiveStatistics;
import org.junit.jupiter.api.Test;

/** Pictures of a stored power-up agree with its conversions at every zoom. */
final class LogPictureTest extends LogUpkeepCase {
  @Test
  void longPowerUpsAreDrawnFromFewRows() throws Exception {
    try (BenchLog log = BenchLog.open(file, Fixture.TIME);
        PowerUpWriter writer =
            log.begin(Fixture.header(PowerUpHeader.Stream.REDUCED), state -> {})) {
      List<Reading> readings = Fixture.readings(0, 62_000, random);
      for (Reading reading : readings) {
        writer.append(reading);
        writer.awaitRoom();
      }
      writer.flush();
      // 620 s: 62 groups, of which 60 were joined 30 at a time.
      assertThat(number("SELECT count(*) FROM span_level WHERE level = 2")).isEqualTo(4);
      assertThat(number("SELECT sum(buckets) FROM span_level WHERE level = 0")).isEqualTo(6200);
      Overview overview = log.find("1").overview(0, 62_000 * 160, 1000);
      for (int column : new int[] {0, 1, 499, 500, 967, 999}) {
        DescriptiveStatistics library = new DescriptiveStatistics();
        for (Reading reading : readings) {
          if (reading.firstIndex() >= overview.edge(column)
              && reading.firstIndex() < overview.edge(column + 1)) {
            library.addValue(reading.lowest(Channel.M));
          }
        }
        assertThat((double) overview.lowest(Channel.M, column)).isEqualTo(library.getMin());
      }
    }
  }

  /** Spans shorter than a column's bucket are drawn from the values, and only from those needed. */
  @Test
  void zoomAgreesWithALibraryAtAnyPlace() throws Exception {
    try (BenchLog log = BenchLog.open(file, Fixture.TIME)) {
      keep(log, 777, 900_000);
      short[] all = new short[900_777];
      for (Object item : expected.items) {
        if (item instanceof Fixture.Run run) {
          for (int k = 0; k < run.counts.size(); k++) {
            all[(int) run.firstIndex + k] = run.counts.get(k);
          }
        }
      }
      for (int repacked = 0; repacked < 2; repacked++) {
        for (long from : new long[] {777, 160_000 - 5, 333_333, 480_000, 868_777}) {
          Overview overview = log.find("1").overview(from, from + 32_000, 50);
          for (int column = 0; column < 50; column += 7) {
            for (Channel channel : Channel.values()) {
              DescriptiveStatistics library = new DescriptiveStatistics();
              for (long i = overview.edge(column); i < overview.edge(column + 1); i++) {
                if (SamplePlan.channelAt(i) == channel) {
                  library.addValue(all[(int) i]);
                }
              }
              assertThat((double) overview.lowest(channel, column)).isEqualTo(library.getMin());
              assertThat((double) overview.highest(channel, column)).isEqualTo(library.getMax());
              assertThat(overview.mean(channel, column))
                  .isCloseTo(library.getMean(), org.assertj.core.data.Offset.offset(1e-9));
            }
          }
        }
        log.repack(() -> true);
      }
    }
  }

  @Test
  void overviewAgreesWithALibraryOnEveryColumn() throws Exception {
    try (BenchLog log = BenchLog.open(file, Fixture.TIME);
        PowerUpWriter writer = log.begin(Fixture.header(PowerUpHeader.Stream.RAW), s -> {})) {
      ConversionBlock whole = Fixture.block(1000, 700_000, random);
      writer.append(whole);
      writer.flush();
      for (int columns : new int[] {3, 100, 1000}) {
        Overview overview = log.find("1").overview(5000, 690_000, columns);
        for (int column = 0; column < columns; column += 1 + columns / 7) {
          double width = 685_000.0 / columns;
          assertThat((double) overview.edge(column))
              .isBetween(5000 + width * (column - 0.25) - 1, 5000 + width * (column + 0.25) + 1);
          for (Channel channel : Channel.values()) {
            DescriptiveStatistics library = new DescriptiveStatistics();
            for (long i = overview.edge(column); i < overview.edge(column + 1); i++) {
              if (i >= 1000 && SamplePlan.channelAt(i) == channel) {
                library.addValue(whole.counts()[(int) (i - 1000)]);
              }
            }
            assertThat(overview.empty(channel, column)).isEqualTo(library.getN() == 0);
            if (library.getN() > 0) {
              assertThat((double) overview.lowest(channel, column)).isEqualTo(library.getMin());
              assertThat((double) overview.highest(channel, column)).isEqualTo(library.getMax());
              assertThat(Math.abs(overview.mean(channel, column) - library.getMean()))
                  .isLessThan(0.05);
            }
          }
        }
      }
    }
  }

  @Test
  void readingsGiveTheSamePictureAsTheirConversions() throws Exception {
    try (BenchLog log = BenchLog.open(file, Fixture.TIME);
        PowerUpWriter writer =
            log.begin(Fixture.header(PowerUpHeader.Stream.REDUCED), state -> {})) {
      List<Reading> readings = Fixture.readings(0, 2100, random);
      readings.forEach(writer::append);
      writer.finish("{}", "normal", "time");
      Overview overview = log.find("1").overview(0, 2100 * 160, 5);
      int lowest =
          readings.stream()
              .filter(r -> r.firstIndex() >= overview.edge(1) && r.firstIndex() < overview.edge(2))
              .mapToInt(r -> r.lowest(Channel.H))
              .min()
              .orElseThrow();
      assertThat(overview.lowest(Channel.H, 1)).isEqualTo(lowest);
      assertThat(replayed(log, "1")).isEqualTo(readings);
    }
  }

  @Test
  void secondsReadInPhysicalUnits() throws Exception {
    try (BenchLog log = BenchLog.open(file, Fixture.TIME)) {
      keep(log, 0, 40_000);
    }
    // V stands at 280 counts of 60 V / 1024: 16.406 V; the nominal ranges of wire-format.md.
    assertThat(Double.parseDouble(text("SELECT avg(supply_v) FROM second_readable")))
        .isBetween(16.38, 16.43);
    assertThat(text("SELECT group_concat(conversions) FROM second_readable"))
        .isEqualTo("16000,16000,8000");
  }
}
