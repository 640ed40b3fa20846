package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.emulate.Scenarios;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What show and list print in German is German from the first line to the last. */
class GermanOutputTest {
  /** Words of English sentences; those that are German too (in, an, so, war ...) are left out. */
  private static final Pattern ENGLISH =
      Pattern.compile(
          "(?i)\\b(the|no|is|of|at|most|least|were|with|after|before|too|not|look|supply|current"
              + "|switch(ed)?|off|on|head|ripple|below|above|expected|watched|showed|kept|first|end"
              + "|short|limit|power-up|sheet|change|gave|drew|values|lost|rail-[a-z]+|[a-z]+-[a-z]+-[a-z]+)\\b");

  @TempDir static Path folder;

  static List<String> scenarios() {
    return Scenarios.names().stream()
        .filter(name -> !name.matches("disk-full|(lead|feed|radio|bring-up|amplifier|speech).*"))
        .toList();
  }

  private static String logged(String scenario) {
    String log = folder.resolve(scenario + ".db").toString();
    CommandRunner.run(
        "demo",
        "--headless",
        "--speed",
        "max",
        "--for",
        "3s",
        "--no-sound",
        "--scenario",
        scenario,
        "--log",
        log);
    return log;
  }

  /** Names that the sheet gives, and the file, are nobody's language. */
  private static String plain(String line) {
    return line.replaceAll("(IF feed|speaker|aufbewahrt in \\S+)", "");
  }

  @ParameterizedTest
  @MethodSource("scenarios")
  void everyScenarioIsShownInGerman(String scenario) {
    String log = logged(scenario);
    CommandRunner.Result shown =
        CommandRunner.run("show", "last", "--log", log, "--language", "de");
    assertThat(shown.exitCode()).isZero();
    assertThat(shown.out()).hasSizeGreaterThan(4).contains("Was sich zeigte:");
    for (String line : shown.out()) {
      assertThat(plain(line)).doesNotContainPattern(ENGLISH).doesNotContain("{");
      assertThat(plain(line))
          .as("decimal comma")
          .doesNotContainPattern("\\d[.]\\d+ (V|mA|A|s|ms)\\b");
    }
  }

  @Test
  void theLinesAreThoseOfTheEnglishOnes() {
    String log = logged("wire-short");
    List<String> english = CommandRunner.run("show", "last", "--log", log).out();
    List<String> german = CommandRunner.run("--language", "de", "show", "last", "--log", log).out();
    assertThat(german).hasSameSizeAs(english);
    assertThat(german.get(0))
        .matches("Einschaltung \\d: hat 1,2 s nach dem Einschalten selbst abgeschaltet .*");
    assertThat(CommandRunner.run("show", "last", "--language", "en", "--log", log).out())
        .isEqualTo(english);
    assertThat(CommandRunner.run("show", "last", "--json", "--language", "de", "--log", log).out())
        .isEqualTo(CommandRunner.run("show", "last", "--json", "--log", log).out());
  }

  @Test
  void theListIsGermanToo() {
    String log = logged("healthy");
    List<String> list = CommandRunner.run("--language", "de", "list", "--log", log).out();
    assertThat(list.get(0)).contains("eingeschaltet am", "Ergebnis", "Gr\u00f6\u00dfe");
    assertThat(list.get(1)).contains("kein Fehler gesehen", "3,01 s");
    CommandRunner.Result unknown = CommandRunner.run("list", "--log", log, "--language", "fr");
    assertThat(unknown.exitCode()).isEqualTo(64);
    assertThat(unknown.err()).contains("--language fr, expected en or de");
  }
}
