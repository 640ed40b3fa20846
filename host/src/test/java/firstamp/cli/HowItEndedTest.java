package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The first sentence of the verdict says how it ended: who opened the switch, why, what to do
 * first. A run in which something switched off is never told as a quiet one.
 */
class HowItEndedTest {
  @TempDir private Path folder;

  private List<String> verdict(String scenario) {
    return verdictOf(
        "demo",
        "--headless",
        "--speed",
        "max",
        "--for",
        "3s",
        "--scenario",
        scenario,
        "--log",
        folder.resolve(scenario + ".db").toString());
  }

  private static List<String> verdictOf(String... arguments) {
    List<String> out = CommandRunner.run(arguments).out();
    return out.subList(out.indexOf("What it showed:") + 1, out.size()).stream()
        .filter(line -> line.startsWith("  - "))
        .map(line -> line.substring(4))
        .toList();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          chassis-lost   | It switched itself off after 1.51 s: the chassis clip came off. Clip it to bare metal of the chassis first; without it no figure counts.
          limiting       | Firstamp switched it off after 1.61 s because the supply went into current limit.
          wrong-polarity | Firstamp switched it off after 2\\d.\\d ms because B1 was reversed: -4.\\d+ V.
          look-short     | Never switched on: the first look found at most 1.[4-7]\\d ohm, a short or a cold lamp.
          reversed       | Never switched on: the supply is the wrong way round.
          wrong-supply   | Never switched on: the supply voltage is too high.
          no-supply      | Never switched on: there is no supply.
          """)
  void theFirstSentenceSaysWhatSwitchedOffAndWhy(String scenario, String first) {
    List<String> verdict = verdict(scenario);
    assertThat(verdict.get(0)).matches(first);
    assertThat(verdict).noneMatch(line -> line.matches("(Nothing tripped|Ran 0).*"));
  }

  @Test
  void aReversedSupplyIsNotAnsweredWithSwappingLeads() {
    assertThat(verdict("reversed").get(1))
        .endsWith("Stop. Read on the set which pole is the chassis before you swap anything.");
  }

  /** Ohms of the short and one highest current, the capture's; the inrush was another event. */
  @Test
  void aShortIsTheFirstSentenceWithItsOhmsAndItsHighestCurrent() {
    List<String> verdict = verdict("wire-short");
    assertThat(verdict).noneMatch(line -> line.startsWith("Too much current"));
    assertThat(verdict.get(0))
        .matches(
            "A short, (at most )?1.[1-5]\\d* ohm: it switched itself off after 1.(19|2) s. Highest"
                + " current [67].\\d\\d? A. Take off the wire joined last, then measure the ohms with the"
                + " supply off.");
    assertThat(verdict("dead-short").get(0))
        .matches(
            "A short, at most (0.9|1.[01])\\d* ohm: the limiter held at least 1[0-3](.\\d)? A for 0.\\d+"
                + " ms, then it switched itself off, (89|90)\\d ms after switching on[.] .*");
  }

  @Test
  void onlyAQuietRunSaysThatNoFaultWasSeenAndWhatWasNotWatched() {
    List<String> verdict = verdict("healthy");
    assertThat(verdict.get(0)).isEqualTo("Ran 0:03, no fault seen.");
    assertThat(verdict.get(verdict.size() - 1)).startsWith("Not watched: ");
    // 33 dB under the tone: a figure, and no advice.
    assertThat(verdict).noneMatch(line -> line.startsWith("Hum in the head"));
    assertThat(verdict("no-draw"))
        .contains("Ran 0:03, with alarms.")
        .noneMatch(line -> line.contains("no fault"));
  }

  /** What only follows from the fault, or from what the person did, is no finding of its own. */
  @ParameterizedTest
  @ValueSource(strings = {"limiting", "rail-drops", "no-draw"})
  void nothingIsSaidOfACourseThatTheFaultHasBroken(String scenario) {
    assertThat(verdict(scenario))
        .noneMatch(line -> line.contains("within 2 % of its end"))
        .noneMatch(line -> line.contains("before it came down"))
        .noneMatch(line -> line.contains("was down to"))
        .noneMatch(line -> line.contains("If it was the motor"))
        .noneMatch(line -> line.contains("ripples too"))
        .noneMatch(line -> line.contains("although the sheet names no rectifier"));
  }

  @Test
  void aBringUpInStepsIsNoFault() {
    List<String> verdict =
        verdictOf(
            "demo",
            "--headless",
            "--speed",
            "max",
            "--scenario",
            "bring-up",
            "--steps",
            "--log",
            folder.resolve("steps.db").toString());
    assertThat(verdict.get(0)).startsWith("Ran 1:");
    assertThat(verdict)
        .noneMatch(line -> line.matches("The current climbed.*|.*within 2 %.*|.*was down to.*"));
  }

  /** The alarm is content with 8 %; a filter behind a rectifier is no single capacitor. */
  @Test
  void aGoodSetOnItsMainsTransformerIsNotCalledLateOrOdd() {
    assertThat(verdict("mains"))
        .anyMatch(line -> line.startsWith("Ran 0:"))
        .noneMatch(line -> line.contains("of its end only after"))
        .noneMatch(line -> line.contains("does not come up like"));
  }

  /** The look: 11.84 V, 3055 uF, 205 ohm; a supply of 2.5 A. By hand in InrushExpectedTest. */
  @Test
  void theInrushIsForetoldBeforeTheSwitchCloses() {
    List<String> out =
        CommandRunner.run(
                "demo",
                "--headless",
                "--speed",
                "max",
                "--for",
                "1s",
                "--log",
                folder.resolve("inrush.db").toString())
            .out();
    int told = 0;
    while (told < out.size() && !out.get(told).startsWith("inrush expected: up to ")) {
      told++;
    }
    assertThat(told).isLessThan(out.indexOf("      0.0 ms  on"));
    // 11.84 V x 330 / 535 = 7.31 V are left; 3055 uF x 7.31 V = 22.3 mC. 2.5 A less 58 mA: 9.1 ms.
    assertThat(out.get(told))
        .matches(
            "inrush expected: up to 2.5 A for about 9.\\d ms, the supply's limit; its own capacitor"
                + " adds a spike of up to 12.5 A");
  }

  @Test
  void nothingIsForetoldWhereTheSwitchStaysOpen() {
    assertThat(
            CommandRunner.run(
                    "demo",
                    "--headless",
                    "--speed",
                    "max",
                    "--for",
                    "1s",
                    "--scenario",
                    "look-short",
                    "--log",
                    folder.resolve("short.db").toString())
                .out())
        .noneMatch(line -> line.startsWith("inrush expected"));
  }

  /** 3 V over 0.6 ohm of an adaptor is 5 A at the most; 6.5 A came. */
  @Test
  void moreInrushThanForetoldIsSaid() throws Exception {
    Path sheet =
        Files.writeString(
            folder.resolve("s.json"),
            "{\"sheet\":1,\"set\":{\"name\":\"Set with a motor on 3 V\"},"
                + "\"supply\":{\"kind\":\"adaptor\",\"nominalV\":3,\"fuseA\":2},"
                + "\"limits\":{\"inrushA\":8,\"inrushMs\":100,\"runningA\":1,\"i2tA2s\":5}}");
    Path front =
        Files.writeString(
            folder.resolve("f.json"), "{\"look\":{\"supplyV\":3,\"loadOhm\":1000,\"loadUf\":200}}");
    assertThat(inrush(sheet, front, "6.5"))
        .anyMatch(
            line ->
                line.matches(
                    "The inrush reached 6\\.[45]\\d* A; the first look \\(\\d+ uF\\) and the supply"
                        + " predicted up to [45](\\.\\d+)? A\\. .*"));
    assertThat(inrush(sheet, front, "4")).noneMatch(line -> line.startsWith("The inrush reached"));
  }

  private List<String> inrush(Path sheet, Path front, String ampere) throws Exception {
    Path wave =
        Files.writeString(
            folder.resolve("w.csv"),
            "t_s,supply_V,supply_A\r\n0,3,"
                + ampere
                + "\r\n0.02,3,"
                + ampere
                + "\r\n0.03,3,0.1\r\n2,3,0.1\r\n");
    return verdictOf(
        "demo",
        "--headless",
        "--speed",
        "max",
        "--for",
        "1s",
        "--waveform",
        wave.toString(),
        "--front-end",
        front.toString(),
        "--sheet",
        sheet.toString(),
        "--log",
        folder.resolve("beyond.db").toString());
  }

  /** What followed is shown too; it does not hide behind what came first. */
  @Test
  void everyAlarmIsInTheVerdict() {
    assertThat(verdict("rail-drops"))
        .anyMatch(line -> line.startsWith("B1 no longer follows the supply:"))
        .anyMatch(line -> line.matches("Also: B1 is too low: [\\d.]+ V, the limit is 7.79 V[.]"));
  }

  @Test
  void aRailThatNeverGetsThereIsTooLowAndNotLate() {
    List<String> verdict = verdict("rail-low");
    assertThat(verdict.get(0)).startsWith("B1 is too low: ");
    assertThat(verdict.get(1)).startsWith("Also: B1 is late: ");
    assertThat(verdict("rail-late").get(0)).startsWith("B1 is late: ");
  }

  /** The text is made when the alarm is raised; how far it went comes behind it. */
  @Test
  void anAlarmSaysHowFarItWent() {
    assertThat(verdict("rail-sags").get(0))
        .matches("B1 is too low: 7[.]\\d+ V, .* Lowest since: 7[.]\\d+ V[.]");
    assertThat(verdict("rail-low").get(0)).doesNotContain("since");
  }

  /** 33 dB under the tone, in step with a rail of a rectified set: that is an ordinary set. */
  @Test
  void theHumOfAnOrdinarySetIsNoAdvice() {
    assertThat(verdict("mains")).noneMatch(line -> line.startsWith("Hum in the head"));
  }
}
