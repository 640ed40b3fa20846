package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * One event has one figure, written one way in every line of a run and of what is printed later.
 */
class OneFigureTest {
  @TempDir Path folder;

  /** All that is printed of a scenario, live and from the log. */
  private List<String> lines(String scenario) {
    String log = folder.resolve(scenario + ".db").toString();
    List<String> lines =
        new ArrayList<>(
            CommandRunner.run(
                    "demo",
                    "--headless",
                    "--speed",
                    "max",
                    "--for",
                    "3s",
                    "--scenario",
                    scenario,
                    "--log",
                    log)
                .out());
    lines.addAll(CommandRunner.run("show", "last", "--log", log).out());
    return lines;
  }

  private static TreeSet<String> found(List<String> lines, String pattern) {
    TreeSet<String> found = new TreeSet<>();
    Pattern regex = Pattern.compile(pattern);
    lines.forEach(
        line -> regex.matcher(line).results().map(MatchResult::group).forEach(found::add));
    return found;
  }

  /** Nothing at the head is no level: the sentence has none, the figures are bounds. */
  @Test
  void aHeadThatGetsNothingHasOneFigure() {
    List<String> lines = lines("lost-head");
    TreeSet<String> decibels = found(lines, "[\\d.]+ dB(?!V|u)");
    // The expected one, the limit, and what a box without calibrated levels is good to.
    decibels.removeAll(List.of("38 dB", "38.0 dB", "44 dB", "0.4 dB"));
    assertThat(decibels).as("beside what was expected, and the limit").hasSize(1);
    assertThat(found(lines, "Head below meter: .*"))
        .allMatch(
            line -> line.matches("Head below meter: at least [\\d.]+ dB \\(not calibrated\\)"));
  }

  /** A distance of two levels has no reference. */
  @Test
  void thePlusMinusOfALevelIsInDecibels() {
    List<String> lines = lines("healthy");
    assertThat(found(lines, "\u00b1 ?[\\d.]+ dB\\w*"))
        .isNotEmpty()
        .allMatch(text -> text.endsWith(" dB"));
  }

  @Test
  void theOhmsOfAShortAreWrittenOneWay() {
    for (String scenario : List.of("dead-short", "wire-short")) {
      List<String> lines = lines(scenario);
      assertThat(found(lines, "[\\d.]+ ohm at most")).isEmpty();
      assertThat(found(lines, "(?<=short[:,] )(at most )?[\\d.]+ ohm")).as(scenario).hasSize(1);
      assertThat(lines).as("a short is no motor").noneMatch(line -> line.contains("motor"));
    }
  }

  @Test
  void theFirstLookIsWrittenOneWay() {
    List<String> lines = lines("healthy");
    assertThat(found(lines, "30[78]\\d uF")).containsExactly("3080 uF");
    assertThat(found(lines, "11[.]8\\d* V")).containsExactly("11.8 V");
  }

  @Test
  void aTripIsWrittenOneWay() {
    List<String> lines = lines("over-voltage");
    assertThat(found(lines, "9[.]8\\d* V")).containsExactly("9.8 V");
    assertThat(found(lines, "10[78]\\d[.]\\d ms after")).isEmpty();
    assertThat(lines.get(lines.indexOf("What it showed:") + 1)).contains("after 1.08 s");
    assertThat(found(lines, "switched itself off .* after switching on"))
        .containsExactly("switched itself off 1.08 s after switching on");
  }
}
