package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.cli.output.ExitCode;
import firstamp.log.BenchLog;
import firstamp.log.PowerUpEntry;
import firstamp.model.TimeSource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A trial is charged to the wire and place that were named, and only if it ran. */
class TrialPowerUpTest {
  @TempDir Path folder;

  @BeforeEach
  void files() throws IOException {
    write("set.json", sheet("Ten tags"));
    write("other.json", sheet("Other set"));
    write("good.csv", "0,12,0.1,8.2\n5,12,0.1,8.2\n");
    write("low.csv", "0,12,0.1,6.1\n5,12,0.1,6.1\n");
    // The rail comes up on the wrong side: a rule switches off after some 30 ms.
    write("reversed.csv", "0,12,0.1,-3\n5,12,0.1,-3\n");
  }

  private static String sheet(String set) {
    return "{\"sheet\":1,\"set\":{\"name\":\""
        + set
        + "\"},\"supply\":{\"nominalV\":12,\"limitA\":1.5,\"idleA\":0.1},"
        + "\"limits\":{\"inrushA\":1,\"inrushMs\":50,\"runningA\":0.5},"
        + "\"rails\":[{\"input\":1,\"name\":\"B1\",\"nominalV\":8.2,\"tolerancePercent\":5}],"
        + "\"unknownWires\":[{\"name\":\"W3\",\"places\":["
        + "{\"name\":\"tag 1\",\"kind\":\"signal\"},{\"name\":\"tag 10\",\"kind\":\"signal\"}]}]}";
  }

  private void write(String name, String text) throws IOException {
    String head = name.endsWith(".csv") ? "t_s,supply_V,supply_A,rail1_V\n" : "";
    Files.writeString(folder.resolve(name), head + text);
  }

  private CommandRunner.Result demo(String sheet, String waveform, String... more) {
    List<String> words =
        new ArrayList<>(List.of("demo", "--headless", "--json", "--speed", "max", "--for", "3s"));
    words.addAll(List.of("--sheet", path(sheet), "--waveform", path(waveform)));
    words.addAll(List.of("--log", path("bench.db")));
    words.addAll(List.of(more));
    return CommandRunner.run(words.toArray(String[]::new));
  }

  private CommandRunner.Result trial(String... more) {
    List<String> words = new ArrayList<>(List.of("trial", path("wires.json")));
    words.addAll(List.of("--sheet", path("set.json"), "--log", path("bench.db")));
    words.addAll(List.of(more));
    return CommandRunner.run(words.toArray(String[]::new));
  }

  private String path(String name) {
    return folder.resolve(name).toString();
  }

  private PowerUpEntry last() throws Exception {
    try (BenchLog log = BenchLog.openForReading(folder.resolve("bench.db"), TimeSource.system())) {
      return log.find("last").entry();
    }
  }

  @Test
  void tagTenIsNotTagOne() throws Exception {
    demo("set.json", "low.csv", "--label", "as it was");
    CommandRunner.Result run =
        demo("set.json", "good.csv", "--wire", "w3", "--place", "Tag 10", "--label", "second try");
    // 1.2 * 100 mA, and what noise and filters add to the peak.
    assertThat(run.err()).containsPattern("a trial of W3: the limit is 12[0-9] mA");
    assertThat(last().trialWire()).isEqualTo("W3");
    assertThat(last().trialPlace()).isEqualTo("tag 10");
    CommandRunner.Result wrong =
        trial("--wire", "W3", "--place", "tag 1", "--power-up", "last", "--json");
    assertThat(wrong.exitCode()).isEqualTo(ExitCode.BAD_DATA);
    assertThat(wrong.err()).contains("power-up 2 tried W3 at tag 10, not W3 at tag 1");
    CommandRunner.Result right = trial("--power-up", "last");
    assertThat(right.exitCode()).as(right.err()).isZero();
    assertThat(right.err()).contains("W3 at tag 10, compared with power-up 1: better");
    assertThat(Files.readString(folder.resolve("wires.json"))).contains("\"place\" : \"tag 10\"");
  }

  @Test
  void aLabelAloneMeansTheLongestPlace() throws Exception {
    demo("set.json", "good.csv", "--label", "W3 at tag 10, soldered");
    assertThat(last().trialPlace()).isEqualTo("tag 10");
    demo("set.json", "good.csv", "--label", "W3 at tag 100");
    assertThat(last().trialPlace()).isNull();
  }

  @Test
  void anotherSetIsRefused() {
    demo("set.json", "low.csv");
    demo("other.json", "good.csv");
    CommandRunner.Result refused = trial("--wire", "W3", "--place", "tag 1", "--power-up", "last");
    assertThat(refused.exitCode()).isEqualTo(ExitCode.BAD_DATA);
    assertThat(refused.err()).contains("power-up 2 is of Other set, these wires are of Ten tags");
  }

  @Test
  void whatNeverRanSaysNothingAndIsNothingToCompareWith() throws Exception {
    demo("set.json", "low.csv");
    demo("set.json", "reversed.csv", "--wire", "W3", "--place", "tag 1");
    assertThat(last().outcome()).isEqualTo("alarm");
    CommandRunner.Result refused = trial("--power-up", "last");
    assertThat(refused.exitCode()).isEqualTo(ExitCode.BAD_DATA);
    assertThat(refused.err()).contains("power-up 2 was on for 0.0").contains("did not settle");
    // One without a wire that never ran is passed over: number 1 is the last good one.
    demo("set.json", "reversed.csv");
    demo("set.json", "good.csv", "--wire", "W3", "--place", "tag 1");
    assertThat(trial("--power-up", "last").err()).contains("compared with power-up 1: better");
  }

  @Test
  void optionsThatNameNothingAreRefusedWithTheNearest() {
    assertThat(demo("set.json", "good.csv", "--wire", "W3").exitCode()).isEqualTo(64);
    CommandRunner.Result place = demo("set.json", "good.csv", "--wire", "W3", "--place", "teg 10");
    assertThat(place.exitCode()).isEqualTo(64);
    assertThat(place.err()).contains("Did you mean 'tag 10'?");
  }
}
