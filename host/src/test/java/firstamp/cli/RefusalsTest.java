package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What the command line refuses, with which exit code and in which words. The codes are those of
 * BSD sysexits (from memory): EX_USAGE 64, EX_DATAERR 65, EX_NOINPUT 66, EX_CANTCREAT 73, EX_IOERR
 * 74.
 */
class RefusalsTest {
  /** Words of the language, the parser of options, the JSON reader and the database. */
  private static final Pattern FOREIGN =
      Pattern.compile(
          "Exception|java\\.|is not a (long|int|double)|at index|mandatory|Unmatched|positional"
              + "|REDACTED|StreamReadFeature|ALLOW_|enabled for parser|Invalid value|SQLITE|\\[|\\bnull\\b"
              + "|malformed \\(|disk image");

  private static final String SHEET =
      "{\"sheet\":1,\"set\":{\"name\":\"Set of the refusals\"},\"supply\":{\"nominalV\":12,\"fuseA\":1}";

  @TempDir static Path folder;

  @BeforeAll
  static void files() throws IOException {
    write("good.json", SHEET + "}");
    write("comment.json", "// a remark\n" + SHEET + "}");
    write("cut.json", SHEET);
    write("twice.json", SHEET + ",\"sheet\":1}");
    write("word.json", SHEET + ",\"limits\":{\"runningA\":one}}");
    write("kind.json", SHEET.replace("refusals\"", "refusals\",\"kind\":\"radio\"") + "}");
    write("mains.json", SHEET.replace("\"nominalV\":12", "\"nominalV\":230") + "}");
    write("newer.json", SHEET.replace("\"sheet\":1", "\"sheet\":2") + "}");
    write("beep.json", SHEET + ",\"rules\":{\"short\":{\"action\":\"beep\"}}}");
    write("wave.csv", "t_s,supply_V,supply_A\r\n0,12,0.1\r\n1,12,0.1\r\n");
    write("bad.csv", "t_s,supply_V,supply_B\r\n0,12,0.1\r\n");
    write("front-comment.json", "{/* none */}");
    write("there.html", "mine");
    write("there.json", "mine");
    Files.write(folder.resolve("latin.json"), "\"Gerät\"".getBytes(StandardCharsets.ISO_8859_1));
    Path log = folder.resolve("one.db");
    assertThat(
            CommandRunner.run(
                    "demo",
                    "--headless",
                    "--speed",
                    "max",
                    "--for",
                    "300ms",
                    "--no-sound",
                    "--log",
                    log.toString())
                .exitCode())
        .isZero();
    byte[] bytes = Files.readAllBytes(log);
    for (int at = 1024; at < bytes.length; at++) {
      bytes[at] = (byte) 0xa5;
    }
    Files.write(folder.resolve("broken.db"), bytes);
  }

  private static void write(String name, String text) throws IOException {
    Files.writeString(folder.resolve(name), text);
  }

  static Stream<Arguments> refusals() {
    return Stream.of(
        refused(64, "Did you mean 'watch'", "wath"),
        refused(64, "Did you mean 'watch'", "wath", "--help"),
        refused(64, "comes with a later version", "job"),
        refused(64, "comes with a later version", "job", "--help"),
        refused(64, "There are: check, backup, delete", "log", "copy", "--help"),
        refused(64, "Did you mean 'delete'", "log", "delte", "1"),
        refused(64, "Did you mean 'check'", "sheet", "chek", "good.json"),
        refused(
            64, "demo has no option --hedless. Did you mean '--headless'?", "demo", "--hedless"),
        refused(64, "list takes no further word, but 'all' was given", "list", "all"),
        refused(64, "--seed 'x', expected a whole number", "demo", "--seed", "x"),
        refused(64, "--noise-counts 'much', expected a number", "demo", "--noise-counts", "much"),
        refused(64, "--for 'ten' is no length of time", "demo", "--for", "ten"),
        refused(64, "--for needs TIME", "demo", "--for"),
        refused(64, "at least 2 of ID are needed", "compare", "1"),
        refused(64, "ID is missing", "show"),
        refused(64, "--to FILE is missing", "export", "last"),
        refused(
            64, "expected firstamp, csv or json", "export", "last", "--to", "x", "--format", "xml"),
        refused(64, "is given twice", "demo", "--seed", "1", "--seed", "2"),
        refused(
            64,
            "--accept 'floating' is not known. Did you mean 'floating-supply'?",
            "watch",
            "--port",
            "p",
            "--sheet",
            "good.json",
            "--accept",
            "floating,above-60"),
        refused(64, "did not arrive whole", "demo", "--label", "Draht \uFFFD"),
        refused(65, "a comment, and JSON has none", "sheet", "check", "comment.json"),
        refused(65, "it ends in the middle", "sheet", "check", "cut.json"),
        refused(65, "the key \"sheet\" twice", "sheet", "check", "twice.json"),
        refused(65, "the word one, which is no JSON", "sheet", "check", "word.json"),
        refused(65, "is not text in UTF-8", "sheet", "check", "latin.json"),
        refused(65, "Did you mean \"receiver\"?", "sheet", "check", "kind.json"),
        refused(65, "Above it stays off the set.", "sheet", "check", "mains.json"),
        refused(65, "A newer version of Firstamp wrote", "sheet", "check", "newer.json"),
        refused(65, "Did you mean \"alarm\"?", "sheet", "check", "beep.json"),
        refused(66, "it is a folder", "sheet", "check", "."),
        refused(66, "there is no job sheet", "sheet", "check", "none.json"),
        refused(
            65, "supply_B", "demo", "--headless", "--waveform", "bad.csv", "--sheet", "good.json"),
        refused(
            66,
            "there is no file none.csv; expected a waveform file",
            "demo",
            "--headless",
            "--waveform",
            "none.csv",
            "--sheet",
            "good.json"),
        refused(
            66,
            "there is no file none.json; expected a front-end file",
            "demo",
            "--headless",
            "--waveform",
            "wave.csv",
            "--sheet",
            "good.json",
            "--front-end",
            "none.json"),
        refused(
            65,
            "a comment, and JSON has none",
            "demo",
            "--headless",
            "--waveform",
            "wave.csv",
            "--sheet",
            "good.json",
            "--front-end",
            "front-comment.json"),
        refused(
            73,
            "its folder does not exist",
            "demo",
            "--headless",
            "--for",
            "300ms",
            "--save-waveform",
            "none/w.csv"),
        refused(73, "is there already", "report", "last", "--to", "there.html", "--log", "one.db"),
        refused(
            73,
            "its folder does not exist",
            "report",
            "last",
            "--to",
            "none/r.html",
            "--log",
            "one.db"),
        refused(73, "is there already", "export", "last", "--to", "there.json", "--log", "one.db"),
        refused(
            73,
            "its folder does not exist",
            "export",
            "last",
            "--to",
            "none/x.csv",
            "--format",
            "csv",
            "--log",
            "one.db"),
        refused(73, "is a folder", "export", "last", "--to", ".", "--log", "one.db"),
        refused(
            73,
            "a part of its path is a file",
            "export",
            "last",
            "--to",
            "there.json/x",
            "--format",
            "csv",
            "--log",
            "one.db"),
        refused(73, "is there already", "log", "backup", "--to", "there.json", "--log", "one.db"),
        refused(73, "is there already", "sheet", "new", "there.json"),
        refused(66, "there is no file", "import", "none.firstamp", "--log", "new.db"),
        refused(66, "there is no bench log", "list", "--log", "none.db"),
        refused(65, "its pages contradict each other", "list", "--log", "broken.db"),
        refused(
            69,
            "none-port",
            "watch",
            "--port",
            "none-port",
            "--sheet",
            "good.json",
            "--headless",
            "--for",
            "1s"));
  }

  private static Arguments refused(int code, String words, String... line) {
    return Arguments.of(code, words, List.of(line));
  }

  @ParameterizedTest
  @MethodSource("refusals")
  void endsWithItsCodeInPlainWords(int code, String words, List<String> line) {
    CommandRunner.Result result =
        CommandRunner.run(line.stream().map(RefusalsTest::placed).toArray(String[]::new));
    assertThat(result.exitCode()).as("%s%n%s", result.err(), result.out()).isEqualTo(code);
    String err = result.err().replace(folder + "/", "");
    assertThat(err).contains(words).doesNotContainPattern(FOREIGN);
    assertThat(result.out()).isEmpty();
    String first = result.err().lines().findFirst().orElse("");
    assertThat(first).startsWith("firstamp: ").matches(".*[.?!:`]");
    assertThat(folder.resolve("there.json")).hasContent("mine");
  }

  /** Names of files are in the folder of the test. */
  private static String placed(String word) {
    boolean file = word.matches("(none|there\\.json)/.*|\\.|[a-z-]+\\.(json|csv|html|db|firstamp)");
    return file ? folder.resolve(word).toString() : word;
  }

  @Test
  void everyRefusalLeavesNoFileBehind() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files.map(file -> file.getFileName().toString()))
          .noneMatch(name -> name.startsWith(".firstamp"));
    }
  }
}
