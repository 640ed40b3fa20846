package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.WindowOptions;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Every view of a German window, as painted, holds no part of an English sentence of any bundle.
 * Names of points and notes of the invented sets are in English; alarms of the scenes are taken as
 * read from a log, which keeps English.
 */
@NeedsDisplay
class GermanViewsTest {
  /** Shorter parts may be the same in both languages. */
  private static final int SHORTEST = 15;

  private static final WindowOptions GERMAN =
      new WindowOptions(WindowOptions.Theme.LIGHT, Locale.GERMAN, false);

  private static Views views;
  private static Set<String> english;

  @BeforeAll
  static void views() throws Exception {
    views = new Views();
    english = english();
  }

  @AfterAll
  static void gone() throws Exception {
    views.close();
  }

  /** What is between the values of English sentences and in none of their German ones. */
  private static Set<String> english() throws IOException {
    Set<String> parts = new TreeSet<>();
    StringBuilder german = new StringBuilder();
    try (Stream<Path> files = Files.walk(Path.of("src/main/resources/firstamp"))) {
      for (Path file : files.filter(each -> each.toString().endsWith(".properties")).toList()) {
        String name = file.getFileName().toString();
        Properties bundle = new Properties();
        bundle.load(new StringReader(Files.readString(file)));
        if (name.endsWith("_de.properties")) {
          bundle.values().forEach(text -> german.append(text).append('\n'));
        } else if (!name.startsWith("alarms")) {
          bundle.values().forEach(text -> parts.addAll(parts(text.toString())));
        }
      }
    }
    parts.removeIf(part -> german.indexOf(part) >= 0);
    return parts;
  }

  private static List<String> parts(String text) {
    return Stream.of(text.replace("''", "'").split("\\{\\d[^}]*\\}"))
        .map(String::strip)
        .filter(part -> part.length() >= SHORTEST && part.contains(" "))
        .toList();
  }

  private static String painted(Views.Maker maker, WindowOptions options) throws Exception {
    return Components.onSwing(() -> PaintedText.of(maker.make(options), Screenshots.SIZE)).stream()
        .map(RecordingGraphics.Ink::text)
        .map(String::strip)
        .collect(Collectors.joining(" "));
  }

  private static List<String> found(String painted) {
    return english.stream().filter(painted::contains).toList();
  }

  @TestFactory
  Stream<DynamicTest> noEnglishIsPainted() {
    return views.makers().entrySet().stream()
        .map(
            (Map.Entry<String, Views.Maker> view) ->
                DynamicTest.dynamicTest(
                    view.getKey(),
                    () -> assertThat(found(painted(view.getValue(), GERMAN))).isEmpty()));
  }

  /** The same look finds English on nearly every view of an English window. */
  @Test
  void tellsAnEnglishWindow() throws Exception {
    WindowOptions options = new WindowOptions(WindowOptions.Theme.LIGHT, Locale.ENGLISH, false);
    int told = 0;
    for (Views.Maker maker : views.makers().values()) {
      told += found(painted(maker, options)).isEmpty() ? 0 : 1;
    }
    assertThat(english).hasSizeGreaterThan(1000);
    assertThat(told).isGreaterThan(views.makers().size() * 9 / 10);
  }
}
