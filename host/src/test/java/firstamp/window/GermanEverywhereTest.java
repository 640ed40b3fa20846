package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import firstamp.sheet.SheetException;
import firstamp.sheet.SheetReader;
import firstamp.window.words.Spoken;
import java.text.MessageFormat;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What other packages say in English has a German form that the window finds again. */
class GermanEverywhereTest {
  /** Words that no German sentence has; names of keys stand in quotes or have a capital inside. */
  private static final Pattern ENGLISH =
      Pattern.compile(
          "\\b(the|is|are|expected|write|number|did you mean|one of|without|there|this|add|unknown"
              + "|missing|port|line|column|running|fuse on)\\b",
          Pattern.CASE_INSENSITIVE);

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
        "firstamp.run.modes",
        "firstamp.run.refusals",
        "firstamp.sheet.problems",
        "firstamp.sheet.questions",
        "firstamp.alarm.alarms",
        "firstamp.account.verdict",
        "firstamp.account.figures",
        "firstamp.account.watch",
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
        assertThat(other.getString(key).contains(hole))
            .as("%s %s %s", name, key, hole)
            .isEqualTo(english.getString(key).contains(hole));
      }
    }
  }

  /** Said as the code says it, every port's and mode's sentence comes out German. */
  @Test
  void findsEverySentenceOfPortsAndModesAgain() {
    for (String name : List.of("firstamp.link.ports", "firstamp.run.modes")) {
      ResourceBundle english = bundle(name, Locale.ROOT);
      for (String key : english.keySet()) {
        Object[] values = {"/dev/x1", "42", "abc"};
        String said = new MessageFormat(english.getString(key), Locale.ROOT).format(values);
        String expected =
            new MessageFormat(bundle(name, Locale.GERMAN).getString(key), Locale.GERMAN)
                .format(values);
        String found =
            name.endsWith("ports") ? german.failure(new Exception(said)) : german.mode(said);
        assertThat(found).as(key).isEqualTo(expected);
        assertThat(found).as(key).doesNotContainPattern(ENGLISH);
      }
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
