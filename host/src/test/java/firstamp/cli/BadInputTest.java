package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.cli.run.Sheets;
import firstamp.run.questions.Questions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BadInputTest {
  private static final String HEAD =
      "{\"sheet\":1,\"set\":{\"name\":\"Probe of the reader\"},\"supply\":{\"nominalV\":12,\"fuseA\":1},\n";

  @TempDir Path folder;

  private Path sheet(String rest) throws IOException {
    Path file = folder.resolve("sheet.json");
    Files.writeString(file, HEAD + rest + "}");
    return file;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "\"limits\":{\"runingA\":1}                         | runningA  | an unknown key names the nearest one",
        "\"limits\":{\"runningA\":\"NaN\"}                  | runningA  | not a number",
        "\"limits\":{\"runningA\":NaN}                      | NaN       | not JSON",
        "\"limits\":{\"runningA\":1e999}                    | runningA  | beyond a double",
        "\"limits\":{\"runningA\":0}                        | runningA  | zero",
        "\"limits\":{\"runningA\":-1}                       | runningA  | negative",
        "\"limits\":{\"runningA\":0.0002}                   | runningA  | finer than the range",
        "\"rails\":[{\"input\":1,\"name\":\"B\",\"nominalV\":5,\"tolerancePercent\":101}] | tolerancePercent | over 100 %",
        "\"rails\":[{\"input\":4,\"name\":\"B\",\"nominalV\":5}] | input  | rail input 4",
      })
  void badSheetsEndWith65AndNameFileAndField(String rest, String named, String why)
      throws IOException {
    Path file = sheet(rest);
    CommandRunner.Result result = CommandRunner.run("sheet", "check", file.toString());
    assertThat(result.exitCode()).as("%s: %s", why, result.err()).isEqualTo(65);
    assertThat(result.err()).as(why).contains(file.toString()).contains(named);
    assertThat(result.err()).as("the line is named").contains("2");
    assertThat(result.out()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"watch,--steps,", "demo,--steps,"})
  void whatTheWindowDoesNotCarryOutIsRefusedWithoutHeadless(
      String command, String option, String value) throws IOException {
    List<String> line = new ArrayList<>(List.of(command, option));
    if (value != null) {
      line.add(value);
    }
    if (command.equals("watch")) {
      line.addAll(List.of("--port", "/dev/ttyNone", "--sheet", sheet("").toString()));
    }
    CommandRunner.Result result = CommandRunner.run(line.toArray(String[]::new));
    assertThat(result.exitCode()).as(result.err()).isEqualTo(64);
    assertThat(result.err()).contains(option + " needs --headless");
  }

  @Test
  void missingSheetEndsWith66() {
    CommandRunner.Result result =
        CommandRunner.run("sheet", "check", folder.resolve("none.json").toString());
    assertThat(result.exitCode()).isEqualTo(66);
    assertThat(result.err()).contains("none.json");
  }

  @Test
  void unknownPortEndsWith69AndSaysWhereToLook() throws IOException {
    CommandRunner.Result result =
        CommandRunner.run(
            "watch",
            "--port",
            "/dev/no-such-port",
            "--sheet",
            sheet("\"rails\":[]").toString(),
            "--headless",
            "--for",
            "1s",
            "--accept",
            "floating-supply,above-60,tape-out",
            "--log",
            folder.resolve("l.db").toString());
    assertThat(result.exitCode()).isEqualTo(69);
    assertThat(result.err()).contains("/dev/no-such-port").contains("firstamp ports");
  }

  @Test
  void aPortThatIsNotThereIsSaidBeforeAnythingIsAsked() throws IOException {
    CommandRunner.Result result =
        CommandRunner.run(
            "watch",
            "--port",
            "/dev/no-such-port",
            "--sheet",
            sheet("\"rails\":[]").toString(),
            "--headless",
            "--for",
            "1s");
    assertThat(result.exitCode()).isEqualTo(69);
    assertThat(result.err()).contains("/dev/no-such-port").doesNotContain("above-60");
  }

  /** What a sheet can ask must be an answer, or it could not be given. */
  @Test
  void everyQuestionIsAnAnswerThatIsKnown() throws Exception {
    for (String kind : new String[] {"bench", "battery", "adaptor", "mains-transformer"}) {
      for (String set : new String[] {"recorder", "receiver", "amplifier", "computer", "other"}) {
        String json =
            "{\"sheet\":1,\"set\":{\"name\":\"A\",\"kind\":\""
                + set
                + "\"},\"supply\":{\"nominalV\":12,\"kind\":\""
                + kind
                + "\"}}";
        assertThat(Questions.ANSWERS)
            .containsAll(Questions.about(Sheets.parse("of a test", json).effective()));
      }
    }
  }

  /** Behind this port nobody answers; it is there and may be opened, so the questions come. */
  @Test
  void unansweredQuestionsEndWith77AndAreAsked() throws IOException {
    CommandRunner.Result result =
        CommandRunner.run(
            "watch",
            "--port",
            "/dev/null",
            "--sheet",
            sheet("\"rails\":[]").toString(),
            "--headless",
            "--for",
            "1s");
    assertThat(result.exitCode()).isEqualTo(77);
    assertThat(result.err())
        .contains("floating-supply")
        .contains("above-60")
        .doesNotContain("no-fuse");
  }

  /** What is not asked is ignored: nothing here is lifted, and this set is no recorder. */
  @Test
  void aPortThatIsNoTerminalIsSaidToBeNone() throws IOException {
    CommandRunner.Result result =
        CommandRunner.run(
            "watch",
            "--port",
            "/dev/null",
            "--sheet",
            sheet("\"rails\":[]").toString(),
            "--headless",
            "--no-sound",
            "--for",
            "1s",
            "--accept",
            "floating-supply,above-60,lifted,tape-out",
            "--log",
            folder.resolve("null.db").toString());
    assertThat(result.exitCode()).as(result.err()).isEqualTo(69);
    assertThat(result.err())
        .contains("/dev/null is no serial port: the system says that it is not a terminal.")
        .doesNotContain("another program");
  }

  @Test
  void logThatIsNotOursEndsWith65() throws IOException {
    Path file = folder.resolve("notes.db");
    Files.writeString(
        file, "these are my notes, and no bench log at all; they must stay as they are");
    CommandRunner.Result result = CommandRunner.run("list", "--log", file.toString());
    assertThat(result.exitCode()).as(result.err()).isEqualTo(65);
    assertThat(result.err()).contains("notes.db");
    CommandRunner.Result demo =
        CommandRunner.run(
            "demo", "--headless", "--speed", "max", "--for", "500ms", "--log", file.toString());
    assertThat(demo.exitCode()).isEqualTo(65);
    assertThat(Files.readString(file)).startsWith("these are my notes");
  }

  @Test
  void missingLogEndsWith66() {
    CommandRunner.Result result =
        CommandRunner.run("list", "--log", folder.resolve("none.db").toString());
    assertThat(result.exitCode()).isEqualTo(66);
  }

  @Test
  void unknownPowerUpEndsWith66() {
    Path log = folder.resolve("one.db");
    CommandRunner.run(
        "demo", "--headless", "--speed", "max", "--for", "300ms", "--log", log.toString());
    CommandRunner.Result result = CommandRunner.run("show", "99", "--log", log.toString());
    assertThat(result.exitCode()).as(result.err()).isEqualTo(66);
    assertThat(result.err()).contains("99");
  }

  @ParameterizedTest
  @CsvSource({"--for,ten", "--for,0s", "--speed,2", "--seed,x"})
  void wrongOptionsEndWith64(String option, String value) {
    CommandRunner.Result result = CommandRunner.run("demo", "--headless", option, value);
    assertThat(result.exitCode()).isEqualTo(64);
    assertThat(result.err()).contains(option);
  }
}
