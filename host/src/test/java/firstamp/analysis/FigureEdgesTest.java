package firstamp.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.account.FigureList;
import firstamp.analysis.figures.Evidence;
import firstamp.analysis.figures.PowerUpFigures;
import firstamp.analysis.spectrum.LevelMeter;
import firstamp.analysis.spectrum.RippleMeter;
import firstamp.model.JobSheet;
import firstamp.model.Look;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.ReadingReducer;
import firstamp.model.samples.SamplePlan;
import firstamp.model.samples.Zero;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Where each figure can be told and where it cannot: too short, clipped, with a gap inside, without
 * mains ripple, dc only, silence. A figure beyond its range is absent, never 0.
 */
class FigureEdgesTest {
  private static final String LOOK = "look.ohm look.uF look.supplyV";
  private static final String SURGE = "inrushPeakA inrushI2tA2s chargeC";
  private static final String END = "steadyA steadyV loadOhm";
  private static final String RAIL = "finalV settledMs settled1Ms settled5Ms settled10Ms";
  private static final String RIPPLE = "rippleVrms rippleHz";
  private static final String LEVELS =
      "headDbv headUa meterDbv meterDbu headBelowMeterDb expectedDb needleVu";
  private static final String TONE = "toneHz harmonicsPercent noiseDbv";
  private static final String HUM = "humDbv humInStepPercent";

  /**
   * One situation.
   *
   * @param name of it
   * @param present keys that must be there
   * @param absent keys that must not
   */
  private record Row(String name, String present, String absent) {
    @Override
    public String toString() {
      return name;
    }
  }

  private static Row row(String name, String present, String absent) {
    return new Row(name, present, absent);
  }

  static List<Row> rows() {
    String all =
        String.join(
            " ",
            LOOK,
            SURGE,
            END,
            RAIL,
            "tauMs filterUf energyJ chargingMs restA",
            RIPPLE,
            LEVELS,
            TONE,
            HUM);
    return List.of(
        row("healthy", all, "surgeUf overshootV droopV speechDb overExpectedDb needlePercent"),
        row("never closed", LOOK, all.replace(LOOK, "")),
        row("no look", SURGE + " " + END + " surgeUf", LOOK),
        row(
            "on for half a second",
            SURGE + " energyJ",
            String.join(" ", END, RAIL, "tauMs", LEVELS, TONE, HUM, "surgeUf filterUf", RIPPLE)),
        row("on for 90 ms", SURGE, String.join(" ", END, RAIL, RIPPLE, LEVELS, "chargingMs restA")),
        row("gap in the first 100 ms", END + " " + RAIL, SURGE + " surgeUf tauMs chargingMs restA"),
        row("gap in the last second", SURGE, END + " " + RAIL + " tauMs filterUf surgeUf"),
        row(
            "gap in every window",
            "inrushPeakA inrushI2tA2s " + END,
            String.join(" ", RIPPLE, "filterUf", LEVELS, TONE, HUM)),
        row("rail at the end of its range", END, RAIL + " tauMs filterUf " + RIPPLE),
        row("ripple reaches the end of the range", END, RIPPLE + " filterUf"),
        row(
            "head at the end of its range",
            END + " " + RAIL,
            LEVELS.replace("expectedDb", "") + " " + TONE + " " + HUM),
        row("no mains ripple", RAIL + " tauMs " + LEVELS, RIPPLE + " filterUf humInStepPercent"),
        row(
            "dc only",
            END + " " + RAIL,
            RIPPLE + " filterUf tauMs chargingMs restA surgeUf " + HUM),
        row(
            "silence",
            END + " " + RAIL,
            "headDbv headUa meterDbv meterDbu headBelowMeterDb"
                + " needleVu toneHz harmonicsPercent noiseDbv speechDb "
                + HUM),
        row("no tone on the sheet", LEVELS.replace("expectedDb", "") + " speechDb", TONE),
        row("speech", LEVELS + " speechDb overExpectedDb", TONE),
        row("speech, nothing expected", "speechDb", "overExpectedDb expectedDb"),
        row("meter input is the movement", "needlePercent", "needleVu"),
        row("no levels on the sheet", END + " " + RAIL, LEVELS + " " + TONE + " " + HUM),
        row("rail swings over and is pulled down", RAIL + " overshootV droopV", "speechDb"),
        row("ripple at the wrong frequency", RIPPLE, "filterUf"),
        row("no rectifier on the sheet", RIPPLE, "filterUf"),
        row("nothing flows", RAIL, "loadOhm surgeUf filterUf chargingMs restA"),
        row("current never rests", END, "surgeUf"));
  }

  @ParameterizedTest
  @MethodSource("rows")
  void whatCanBeToldIsThereAndWhatCannotIsAbsent(Row row) {
    FigureList figures = FigureList.of(new Run(row.name()).evidence());
    List<String> wrong = new ArrayList<>();
    for (String key : keys(row.present())) {
      if (found(figures, key) == null) {
        wrong.add("missing " + key);
      }
    }
    for (String key : keys(row.absent())) {
      if (found(figures, key) != null) {
        wrong.add(key + " is there: " + found(figures, key));
      }
    }
    assertThat(wrong).isEmpty();
    figures.figures().forEach(figure -> assertThat(figure.value()).as(figure.key()).isFinite());
  }

  /** A new figure must come into this table on both sides. */
  @Test
  void everyFigureStandsOnBothSidesOfTheTable() {
    Set<String> present = new TreeSet<>();
    Set<String> absent = new TreeSet<>();
    for (Row row : rows()) {
      present.addAll(keys(row.present()));
      absent.addAll(keys(row.absent()));
    }
    Set<String> names =
        new TreeSet<>(ResourceBundle.getBundle("firstamp.account.figures", Locale.ROOT).keySet());
    // The comparison's words and the bounds are no figures.
    names.removeIf(name -> name.startsWith("parting.") || name.startsWith("value."));
    assertThat(present).isEqualTo(names);
    Set<String> notAbsent = new TreeSet<>(names);
    notAbsent.removeAll(absent);
    assertThat(notAbsent).isEmpty();
  }

  @Test
  void aPeakBeyondTheRangeIsAtLeast() {
    Run run = new Run("healthy");
    run.feed.amps(Run.after(t -> 14 * Math.exp(-t / 0.02) + 0.1));
    Evidence evidence = run.evidence();
    assertThat(evidence.peakClipped()).isTrue();
    assertThat(new Run("healthy").evidence().peakClipped()).isFalse();
  }

  @Test
  void aHeadInTheNoiseIsAtMost() {
    Run run = new Run("healthy");
    run.feed.with(Channel.H, t -> 0);
    assertThat(run.evidence().heard().headAtFloor()).isTrue();
    assertThat(new Run("healthy").evidence().heard().headAtFloor()).isFalse();
  }

  private static FigureList.Figure found(FigureList figures, String key) {
    FigureList.Figure of = figures.find(key, 0);
    return of == null ? figures.find(key, 1) : of;
  }

  private static List<String> keys(String list) {
    return Arrays.stream(list.trim().split(" +")).filter(key -> !key.isEmpty()).toList();
  }

  /** One situation, fed into the figures. The switch closes after 2 s and opens 5 s later. */
  private static final class Run {
    private static final long CLOSED = 2;
    private final String name;
    private final SignalFeed feed = new SignalFeed().noise(0.7, 41);
    private double onMs = 5000;
    private String rectifier = "full";
    private Double nominalV = 9.0;
    private JobSheet.Levels levels =
        new JobSheet.Levels(400.0, 10.0, 38.0, 6.0, -30.0, 500.0, null);

    Run(String name) {
      this.name = name;
      feed.amps(after(t -> 1.2 * Math.exp(-t / 0.03) + 0.12))
          .with(Channel.V, after(t -> 12))
          .rail(1, after(t -> 9 * (1 - Math.exp(-t / 0.05)) + saw(t, 100)))
          .with(Channel.M, after(SignalFeed.sine(0.126, 400)))
          .with(
              Channel.H,
              after(
                  t ->
                      SignalFeed.sine(1.26e-3, 400).applyAsDouble(t)
                          + SignalFeed.sine(2e-5, 800).applyAsDouble(t)
                          + 1e-3 * saw(t, 100)));
      set();
    }

    /** 0.12 A out of 2000 uF at so many pulses a second. */
    private static double saw(double t, double hz) {
      return 0.12 / (hz * 2000e-6) * (0.5 - t * hz % 1);
    }

    private static DoubleUnaryOperator after(DoubleUnaryOperator course) {
      return t -> t < CLOSED ? 0 : course.applyAsDouble(t - CLOSED);
    }

    /** Speech-like: three tones that come and go. */
    private static double speech(double t) {
      double swell = 0.6 + 0.4 * Math.sin(2 * Math.PI * 1.3 * t);
      return swell
          * (SignalFeed.sine(0.05, 187).applyAsDouble(t)
              + SignalFeed.sine(0.08, 613).applyAsDouble(t)
              + SignalFeed.sine(0.03, 1210).applyAsDouble(t));
    }

    private void set() {
      switch (name) {
        case "on for half a second" -> onMs = 500;
        case "on for 90 ms" -> onMs = 90;
        case "rail at the end of its range" -> feed.rail(1, after(t -> 25));
        case "ripple reaches the end of the range" -> feed.rail(1, after(t -> 19.9 + saw(t, 100)));
        case "head at the end of its range" ->
            feed.with(Channel.H, after(SignalFeed.sine(9e-3, 400)));
        case "no mains ripple" -> feed.rail(1, after(t -> 9 * (1 - Math.exp(-t / 0.05))));
        case "dc only" ->
            feed.amps(after(t -> 0.12))
                .rail(1, after(t -> 9))
                .with(Channel.M, t -> 0.5)
                .with(Channel.H, t -> 1e-3);
        case "silence" -> feed.with(Channel.M, t -> 0).with(Channel.H, t -> 0);
        case "no tone on the sheet" ->
            levels = new JobSheet.Levels(null, 10.0, 38.0, 6.0, -30.0, 500.0, null);
        case "speech" -> voice();
        case "speech, nothing expected" -> {
          voice();
          levels = new JobSheet.Levels(400.0, 10.0, null, 6.0, -30.0, 500.0, null);
        }
        case "meter input is the movement" -> {
          levels = new JobSheet.Levels(400.0, 10.0, 38.0, 6.0, -30.0, 500.0, 1.0);
          feed.with(Channel.M, after(t -> 0.6));
        }
        case "no levels on the sheet" -> levels = null;
        case "rail swings over and is pulled down" ->
            feed.rail(1, after(t -> t < 0.5 ? 11 : t > 2 && t < 3 ? 8 : 9));
        case "ripple at the wrong frequency" -> feed.rail(1, after(t -> 9 + saw(t, 50)));
        case "no rectifier on the sheet" -> rectifier = "none";
        case "nothing flows" -> feed.noise(0, 1).amps(t -> 0);
        case "current never rests" -> feed.amps(after(t -> 0.1 + 0.03 * t));
        default -> {
          // The courses as they are.
        }
      }
    }

    private void voice() {
      feed.with(Channel.M, after(Run::speech)).with(Channel.H, after(t -> 0.0126 * speech(t)));
    }

    private JobSheet sheet() {
      return Sheets.sheet(
          levels, new JobSheet.Rail(1, "B1", nominalV, 10.0, 400.0, 20.0, null, 2000.0, rectifier));
    }

    private boolean inGap(long index) {
      double ms = index * 0.0625 - 1000.0 * CLOSED;
      return switch (name) {
        case "gap in the first 100 ms" -> ms >= 30 && ms < 45;
        case "gap in the last second" -> ms >= 4300 && ms < 4700;
        case "gap in every window" -> ms >= 400 && index % 3200 == 1600;
        default -> false;
      };
    }

    Evidence evidence() {
      JobSheet sheet = sheet();
      PowerUpFigures figures = new PowerUpFigures(sheet, feed.calibration(), 330, 10);
      ReadingReducer reducer = new ReadingReducer(figures::onReading);
      LevelMeter meter =
          new LevelMeter(sheet, feed.calibration(), figures::onLevels, figures::onDetail);
      RippleMeter ripple =
          new RippleMeter(sheet, feed.calibration(), figures::onRipple, figures::onRailLines);
      if (!name.equals("no look")) {
        figures.onEvent(new ProbeEvent.Looked(1_900_000, look()));
      }
      long end = Math.round((CLOSED + onMs / 1000) * SamplePlan.CONVERSIONS_PER_SECOND) + 3200;
      for (long at = 0; at < end; at += 160) {
        if (at == CLOSED * 16_000 && !name.equals("never closed")) {
          figures.onEvent(
              new ProbeEvent.SwitchChanged(CLOSED * 1_000_000, SwitchState.ON, OffCause.USER));
        }
        for (ConversionBlock block : pieces(at)) {
          figures.accept(block);
          meter.accept(block);
          ripple.accept(block);
          reducer.accept(block.firstIndex(), block.counts(), 0, block.counts().length);
        }
      }
      figures.onEvent(
          new ProbeEvent.SwitchChanged(
              Math.round(CLOSED * 1e6 + onMs * 1000), SwitchState.OFF, OffCause.TIME));
      return figures.evidence();
    }

    /** A stretch of 160 conversions without what the gap took. */
    private List<ConversionBlock> pieces(long at) {
      List<ConversionBlock> pieces = new ArrayList<>();
      int from = 0;
      for (int k = 0; k <= 160; k++) {
        if (k == 160 || inGap(at + k)) {
          if (k > from) {
            pieces.add(feed.block(at + from, k - from));
          }
          from = k + 1;
        }
      }
      return pieces;
    }

    /** 12 V behind 330 ohm into 1000 ohm and 2000 uF for 2 s, as the probe counts it. */
    private static Look look() {
      int pairs = 1000;
      double parallel = 330.0 * 1000 / 1330;
      double tau = 2000e-6 * parallel;
      long sumV = 0;
      long sumJ = 0;
      double countV = 0;
      double countJ = 0;
      for (int k = 0; k < pairs; k++) {
        double volts = 12.0 * 1000 / 1330 * (1 - Math.exp(-k * 0.002 / tau));
        countV = volts / 60 * 1024;
        countJ = (12 - volts) / 330 / 0.4 * 1024;
        sumV += Math.round(countV);
        sumJ += Math.round(countJ);
      }
      return new Look(
          Look.Result.CLEAR,
          true,
          0,
          1_900_000,
          Zero.NONE,
          pairs,
          (int) Math.round(16 * countV),
          (int) Math.round(16 * countJ),
          sumV,
          sumJ);
    }
  }
}
