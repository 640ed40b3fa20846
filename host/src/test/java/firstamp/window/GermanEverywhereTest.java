package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import firstamp.model.text.Worded;
import firstamp.sheet.SheetException;
import firstamp.sheet.SheetReader;
import firstamp.window.words.Spoken;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What other packages say in English has a German form that the window finds again. */
class GermanEverywhereTest {
  /** Words that no German sentence has; names of keys are in quotes or have a capital inside. */
  private static final Pattern ENGLISH =
      Pattern.compile(
          "\\b(the|is|are|expected|write|number|did you mean|one of|without|there|this|add|unknown"
              + "|missing|port|line|column|running|fuse on)\\b",
          Pattern.CASE_INSENSITIVE);

  /** Where the English sentence holds something that has only English. */
  private static final Set<String> LEFT_OUT =
      Set.of(
          "run.started",
          "run.started.number",
          "run.cable.lost",
          "run.cable.restored",
          "run.cable.probe-restarted",
          "log-database.no-room-on-the-disk",
          "log-database.the-file-or-its-folder",
          "log-database.cannot-be-opened-check-that",
          "log-database.another-program-holds-it-close",
          "log-database.damaged-take-the-newest-backup",
          "log-database.the-disk-or-the-database",
          "log-database.the-file-is-gone-put",
          "log-database.is-not-a-bench-log");

  private final Spoken german = new Spoken(Locale.GERMAN);

  private static ResourceBundle bundle(String name, Locale locale) {
    return ResourceBundle.getBundle(
        name,
        locale,
        ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "firstamp.link.ports",
        "firstamp.log.trouble",
        "firstamp.model.limits.limits",
        "firstamp.model.self-test",
        "firstamp.model.text.failures",
        "firstamp.run.modes",
        "firstamp.run.refusals",
        "firstamp.run.steps",
        "firstamp.sheet.problems",
        "firstamp.sheet.questions",
        "firstamp.alarm.alarms",
        "firstamp.account.verdict",
        "firstamp.account.figures",
        "firstamp.account.watch",
        "firstamp.account.comparison",
        "firstamp.log.failures",
        "firstamp.run.questions",
        "firstamp.cli.output.said",
        "firstamp.report.report",
        "firstamp.locate.path",
        "firstamp.locate.wires",
        "firstamp.study.thinking",
        "firstamp.cli.output.show",
        "firstamp.window.scenarios"
      })
  void everyTextHasAGermanForm(String name) {
    ResourceBundle english = bundle(name, Locale.ROOT);
    ResourceBundle other = bundle(name, Locale.GERMAN);
    assertThat(new TreeSet<>(other.keySet())).isEqualTo(new TreeSet<>(english.keySet()));
    for (String key : english.keySet()) {
      for (int figure = 0; figure < 6; figure++) {
        String hole = "{" + figure + "}";
        if (LEFT_OUT.contains(key)) {
          continue;
        }
        assertThat(other.getString(key).contains(hole))
            .as("%s %s %s", name, key, hole)
            .isEqualTo(english.getString(key).contains(hole));
      }
    }
  }

  /** What other packages say comes out German, whatever is put into it. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "firstamp.link.ports",
        "firstamp.log.trouble",
        "firstamp.model.limits.limits",
        "firstamp.model.self-test",
        "firstamp.model.text.failures",
        "firstamp.run.modes",
        "firstamp.run.refusals",
        "firstamp.run.steps",
        "firstamp.sheet.problems"
      })
  void everySentenceIsGerman(String name) {
    for (String key : bundle(name, Locale.ROOT).keySet()) {
      Worded words = Worded.of(name, key, "/dev/x1", 42, "abc", 1.5, "x", "y");
      String said = german.say(words).replaceAll("`[^`]*`|\"[^\"]*\"|\\([^)]*\\)", "");
      assertThat(said).as(key).doesNotContainPattern(ENGLISH).doesNotContain("{");
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "{",
        "{} {}",
        "{\"set\":{}}",
        "{\"set\":{\"name\":\"x\"}}",
        "{\"set\":{\"name\":\"x\"},\"supplie\":{}}",
        "{\"set\":{\"name\":7},\"supply\":{\"nominalV\":12}}",
        "{\"set\":{\"name\":\"x\"},\"supply\":{\"nominalV\":\"12\"}}",
        "{\"set\":{\"name\":\"x\"},\"supply\":{\"nominalV\":120000}}",
        "{\"set\":{\"name\":\"x\",\"kind\":\"recoder\"},\"supply\":{\"nominalV\":12}}",
        "{\"set\":{\"name\":\"x\",\"kind\":7},\"supply\":{\"nominalV\":12}}",
        "{\"set\":{\"name\":\"x\"},\"supply\":{\"nominalV\":12,\"look\":\"yes\"}}",
        "{\"set\":{\"name\":\"x\"},\"supply\":{\"nominalV\":12,\"minV\":13}}",
        "{\"set\":{\"name\":\"x\"},\"supply\":{\"nominalV\":12,\"maxV\":11}}",
        "{\"set\":{\"name\":\"x\"},\"supply\":{\"nominalV\":12},\"rails\":{}}",
        "{\"set\":{\"name\":\"x\"},\"supply\":{\"nominalV\":12},\"rails\":[{\"input\":1.5}]}",
        "{\"set\":{\"name\":\"x\"},\"supply\":{\"nominalV\":12},"
            + "\"rails\":[{\"input\":1},{\"input\":1}]}",
        "{\"set\":{\"name\":\"x\"},\"supply\":{\"nominalV\":12},"
            + "\"rails\":[{\"input\":1,\"nominalV\":0.01}]}",
        "{\"set\":{\"name\":\"x\"},\"supply\":{\"nominalV\":12},"
            + "\"rails\":[{\"input\":1,\"nominalV\":8,\"overV\":7}]}"
      })
  void aRefusedSheetIsSaidInGerman(String json) {
    SheetException refused =
        catchThrowableOfType(
            SheetException.class, () -> SheetReader.parse("mein Blatt", json).sheet());
    assertThat(refused).as(json).isNotNull();
    String said = german.failure(refused);
    String plain =
        said.replaceAll("\"[^\"]*\"", "")
            .replaceAll("\\(.*\\)", "")
            .replaceAll("es gibt .*[.]", "");
    assertThat(plain).as("%s%n%s", refused.getMessage(), said).doesNotContainPattern(ENGLISH);
    assertThat(said).contains("mein Blatt").doesNotContain(", line ");
  }
}
