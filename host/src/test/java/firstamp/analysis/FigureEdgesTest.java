package firstamp.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.account.FigureList;
import firstamp.analysis.figures.Evidence;
import firstamp.model.samples.Channel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.TreeSet;
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
    FigureList figures = FigureList.of(new EdgeRun(row.name()).evidence());
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
    EdgeRun run = new EdgeRun("healthy");
    run.feed.amps(EdgeRun.after(t -> 14 * Math.exp(-t / 0.02) + 0.1));
    Evidence evidence = run.evidence();
    assertThat(evidence.peakClipped()).isTrue();
    assertThat(new EdgeRun("healthy").evidence().peakClipped()).isFalse();
  }

  @Test
  void aHeadInTheNoiseIsAtMost() {
    EdgeRun run = new EdgeRun("healthy");
    run.feed.with(Channel.H, t -> 0);
    assertThat(run.evidence().heard().headAtFloor()).isTrue();
    assertThat(new EdgeRun("healthy").evidence().heard().headAtFloor()).isFalse();
  }

  private static FigureList.Figure found(FigureList figures, String key) {
    FigureList.Figure of = figures.find(key, 0);
    return of == null ? figures.find(key, 1) : of;
  }

  private static List<String> keys(String list) {
    return Arrays.stream(list.trim().split(" +")).filter(key -> !key.isEmpty()).toList();
  }
}
