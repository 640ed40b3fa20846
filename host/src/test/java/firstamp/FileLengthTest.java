package firstamp;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A source file holds one idea, in 300 lines at most. */
class FileLengthTest {
  private static final int LINES_AT_MOST = 300;

  private static final List<Path> SOURCES =
      List.of(
          Path.of("src"),
          Path.of("benchmarks", "src"),
          Path.of("..", "firmware-protocol", "src"),
          Path.of("..", "firmware-protocol", "firmware"));

  /** Files that are still longer, and how long each may be: they may only shrink. */
  private static final Map<String, Integer> STILL_LONGER =
      Map.ofEntries(
          Map.entry("BenchLog.java", 444),
          Map.entry("BenchPanel.java", 594),
          Map.entry("CalibrationTalk.java", 311),
          Map.entry("Chain.java", 378),
          Map.entry("Desk.java", 450),
          Map.entry("JobSheet.java", 426),
          Map.entry("PowerUpWriter.java", 481),
          Map.entry("ProbeMachine.java", 566),
          Map.entry("ProbeMessage.java", 491),
          Map.entry("RunSteps.java", 379),
          Map.entry("Snapshot.java", 510),
          Map.entry("StreamReader.java", 350),
          Map.entry("StreamStore.java", 331),
          Map.entry("TripJudge.java", 310),
          Map.entry("VerdictPage.java", 311),
          Map.entry("LiveRun.java", 319),
          Map.entry("WindowShell.java", 386),
          Map.entry("ticks.c", 318));

  private static Map<String, Integer> longFiles(List<Path> roots) throws IOException {
    Map<String, Integer> found = new TreeMap<>();
    for (Path root : roots) {
      try (Stream<Path> all = Files.walk(root)) {
        for (Path file : all.filter(each -> each.toString().matches(".*\\.(java|c|h)")).toList()) {
          int lines = Files.readAllLines(file).size();
          if (lines > LINES_AT_MOST) {
            found.put(file.getFileName().toString(), lines);
          }
        }
      }
    }
    return found;
  }

  private static List<String> tooLong(Map<String, Integer> found, Map<String, Integer> allowed) {
    List<String> wrong = new ArrayList<>();
    found.forEach(
        (file, lines) -> {
          int most = allowed.getOrDefault(file, LINES_AT_MOST);
          if (lines > most) {
            wrong.add(file + ": " + lines + " lines, at most " + most);
          }
        });
    return wrong;
  }

  @Test
  void noFileIsLongerThan300LinesOrGrows() throws IOException {
    assertThat(tooLong(longFiles(SOURCES), STILL_LONGER)).isEmpty();
  }

  @Test
  void whatIsShortEnoughIsNoExceptionAnyMore() throws IOException {
    assertThat(STILL_LONGER.keySet()).isSubsetOf(longFiles(SOURCES).keySet());
  }

  @Test
  void seesTheSourcesAndNamesWhatIsTooLong() throws IOException {
    for (Path root : SOURCES) {
      try (Stream<Path> all = Files.walk(root)) {
        assertThat(all.filter(each -> each.toString().matches(".*\\.(java|c)")).count())
            .as("sources in %s", root)
            .isGreaterThan(10);
      }
    }
    assertThat(tooLong(Map.of("A.java", 301, "B.java", 420), Map.of("B.java", 420)))
        .containsExactly("A.java: 301 lines, at most 300");
  }
}
