package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import firstamp.model.text.Worded;
import firstamp.sheet.SheetException;
import firstamp.sheet.SheetReader;
import firstamp.window.words.Spoken;
import java.util.Locale;
import java.util.ResourceBundle;
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

  private final Spoken german = new Spoken(Locale.GERMAN);

  private static ResourceBundle bundle(String name, Locale locale) {
    return ResourceBundle.getBundle(
        name,
        locale,
        ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
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
        "firstamp.sheet.check",
        "firstamp.sheet.problems",
        "firstamp.supply.answers"
      })
  void everySentenceIsGerman(String name) {
    for (String key : bundle(name, Locale.ROOT).keySet()) {
      Worded words = Worded.of(name, key, "/dev/x1", 42, "abc", 1.5, "x", "y", "z");
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
