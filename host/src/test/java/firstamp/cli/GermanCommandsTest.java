package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** With --language de every command speaks German, on both streams. */
class GermanCommandsTest {
  /** Words that an English sentence can hardly do without and that no German one has. */
  private static final Pattern ENGLISH =
      Pattern.compile(
          "(?i)\\b(the|no|is|are|of|at|most|least|were|with|after|before|too|not|nothing|from|and|or"
              + "|this|that|there|it|its|to|on|only|expected|write|file|missing|given|unknown"
              + "|did|you|your|check|cannot|been|has|have|by|for|than|then|which|where|what|measure)\\b");

  @TempDir static Path folder;

  @BeforeAll
  static void twoPowerUps() {
    for (String scenario : List.of("healthy", "wire-short")) {
      german(
          "demo",
          "--headless",
          "--speed",
          "max",
          "--for",
          "2s",
          "--no-sound",
          "--scenario",
          scenario,
          "--log",
          log());
    }
  }

  private static String log() {
    return folder.resolve("bench.db").toString();
  }

  static List<String> german(String... arguments) {
    List<String> all = new ArrayList<>(List.of(arguments));
    all.add("--language");
    all.add("de");
    CommandRunner.Result result = CommandRunner.run(all.toArray(String[]::new));
    List<String> lines = new ArrayList<>(result.out());
    lines.addAll(result.err().lines().toList());
    return lines;
  }

  /** Without what is nobody's language: names that are typed, paths, commands, set names. */
  static String plain(String line) {
    return line.replaceAll("`[^`]*`", "")
        .replaceAll("\"[^\"]*\"", "")
        .replaceAll("'[^']*'", "")
        .replaceAll("--[a-z-]+( [A-Z]+)?", "")
        .replaceAll("\\{.*\\}", "")
        .replaceAll("Es gibt: .*", "")
        .replaceAll("(Larch|Ostrel|Quandel) .*\\(invented\\)", "")
        .replaceAll("\\S*/\\S+", "")
        .replaceAll("(IF feed|firstamp [a-z ]+|[a-z]+(-[a-z]+)+)", "");
  }

  static void allGerman(List<String> lines) {
    assertThat(lines).isNotEmpty();
    for (String line : lines) {
      assertThat(plain(line)).as(line).doesNotContainPattern(ENGLISH).doesNotContain("{");
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "demo --headless --speed max --for 1s --no-sound",
        "demo --headless --speed max --for 1s --no-sound --scenario wire-short",
        "demo --headless --speed max --for 1s --no-sound --scenario tired-filter",
        "demo --headless --speed max --for 1s --no-sound --scenario no-draw --ideal",
        "demo --headless --speed max --no-sound --scenario bring-up --steps",
        "demo --headless --scenario nothing-such",
        "demo --headless --for soon",
        "demo --headless --speed 3",
        "demo --waveform nowhere.csv --headless",
        "demo --headless --new-box --ideal",
        "replay 1 --headless --speed max",
        "replay 2 --headless --speed max",
        "replay 99 --headless",
        "show 1",
        "show 99",
        "list",
        "compare 1 2",
        "compare 1 2 1",
        "compare 1#7 2",
        "export 1 --to /nowhere/x.csv",
        "import nowhere.firstamp",
        "log check",
        "calibrate --emulated --yes",
        "calibrate --emulated --show",
        "calibrate --emulated --try-the-cut --yes",
        "calibrate --emulated --yes --first-box",
        "calibrate"
      })
  void speaksGerman(String line) {
    List<String> arguments = new ArrayList<>(List.of(line.split(" ")));
    if (!line.startsWith("import") && !line.contains("nowhere.csv")) {
      arguments.add("--log");
      arguments.add(log());
    }
    allGerman(german(arguments.toArray(String[]::new)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "dmeo",
        "watch",
        "watch --port /dev/nowhere --sheet nowhere.json --headless --for 5s",
        "watch --port /dev/nowhere --sheet nowhere.json --headless",
        "list --jsn",
        "list more",
        "show",
        "compare 1",
        "sheet",
        "sheet chekc x.json",
        "sheet check nowhere.json",
        "log",
        "job",
        "locate",
        "locate nowhere.json",
        "trial nowhere.json",
        "locate --example xyz",
        "ports"
      })
  void saysWhatIsWrongInGerman(String line) {
    allGerman(german(line.split(" ")));
  }

  /** Their paths, wires and notes have English names; no sentence about them is English. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "locate --example silent-head",
        "trial --example screened-lead",
        "trial --example cotton-leads",
        "trial --example cotton-leads --all"
      })
  void theExamplesAreToldInGerman(String line) {
    String told = String.join("\n", german(line.split(" ")));
    assertThat(told).hasSizeGreaterThan(500);
    for (String name : List.of("firstamp.locate.path", "firstamp.locate.wires")) {
      ResourceBundle english = ResourceBundle.getBundle(name, Locale.ROOT);
      for (String key : english.keySet()) {
        for (String part : english.getString(key).split("\\{\\d\\}")) {
          if (part.strip().length() >= 12) {
            assertThat(told).as(key).doesNotContain(part.strip());
          }
        }
      }
    }
  }

  /** All help there is: descriptions, options and the words beside the examples. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "--help",
        "bench --help",
        "demo --help",
        "ports --help",
        "watch --help",
        "list --help",
        "show --help",
        "replay --help",
        "compare --help",
        "report --help",
        "export --help",
        "import --help",
        "log --help",
        "log check --help",
        "log backup --help",
        "log delete --help",
        "sheet --help",
        "sheet check --help",
        "sheet new --help",
        "sheet learn --help",
        "calibrate --help",
        "locate --help",
        "trial --help"
      })
  void helpsInGerman(String line) {
    List<String> help = german(line.split(" "));
    assertThat(help).anyMatch(each -> each.startsWith("Aufruf: "));
    allGerman(
        help.stream()
            .map(each -> each.replaceAll("^ *firstamp .*?(   |$)", ""))
            .map(
                each ->
                    each.replaceAll(
                        "^ +(-\\S+, )?--\\S*|^  [a-z]+ |^ +FILE|volts oder nothing|yes oder no",
                        ""))
            .filter(each -> !each.matches(".*(\\[-|[A-Z]\\]|Aufruf: |record o|changed T).*"))
            .toList());
  }

  /** The page's own words; names of rails and of the sheet's keys are as they are. */
  @Test
  void writesTheReportInGerman() throws Exception {
    for (String id : List.of("1", "2")) {
      Path page = folder.resolve("report-" + id + ".html");
      allGerman(german("report", id, "--log", log(), "--to", page.toString(), "--force"));
      String html = Files.readString(page);
      assertThat(html).contains("<html lang=\"de\">", "Vorsicht", "Ergebnis");
      String body =
          html.substring(html.indexOf("<body>"))
              .replaceAll("(?s)<svg.*?</svg>", " ")
              .replaceAll("(?s)<h2>Blatt.*?</table>", " ")
              .replaceAll("(?s)<h2>\u00dcberwacht</h2>\\s*<p>.*?</p>", " ")
              .replaceAll("emulated probe, scenario [a-z-]+", " ");
      allGerman(body.replaceAll("<[^>]*>", "\n").lines().filter(each -> !each.isBlank()).toList());
    }
  }

  /** The check is one that can fail: the English run of the same commands does. */
  @Test
  void anEnglishRunIsTold() {
    for (String line : List.of("list more", "show 99", "dmeo", "watch")) {
      CommandRunner.Result english = CommandRunner.run(line.split(" "));
      assertThat(english.err().lines().map(GermanCommandsTest::plain))
          .as(line)
          .anyMatch(each -> ENGLISH.matcher(each).find());
    }
  }
}
