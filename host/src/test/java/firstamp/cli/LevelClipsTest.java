package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A clip of head or meter that is joined to nothing is not taken for a set that loses its signal.
 */
class LevelClipsTest {
  private static final String SHEET =
      "{\"sheet\":1,\"set\":{\"name\":\"Set on a line\"},\"supply\":{\"nominalV\":12,"
          + "\"fuseA\":1},\"levels\":{\"toneHz\":400,\"expectedDb\":30,\"marginDb\":6,"
          + "\"meterSignalDbv\":-30,\"fromMs\":500}}";

  @TempDir private Path folder;

  private String log() {
    return folder.resolve("l.db").toString();
  }

  private CommandRunner.Result demo(String... more) {
    List<String> all =
        new ArrayList<>(List.of("demo", "--headless", "--json", "--speed", "max", "--log", log()));
    all.addAll(List.of(more));
    return CommandRunner.run(all.toArray(String[]::new));
  }

  /** A tone at the meter, and at the head where the file has that column; 12 V, 0.1 A. */
  private CommandRunner.Result toneWith(String columns) throws IOException {
    StringBuilder csv = new StringBuilder("t_s,supply_V,supply_A" + columns + "\n");
    for (int k = 0; k <= 64_000; k++) {
      double t = k / 16_000.0;
      double tone = Math.sin(2 * Math.PI * 400 * t);
      csv.append(t).append(",12,0.1");
      csv.append(columns.contains("head") ? "," + 0.003 * tone : "");
      csv.append(columns.contains("meter") ? "," + 0.2 * tone : "").append('\n');
    }
    Path wave = Files.writeString(folder.resolve("w.csv"), csv);
    Path sheet = Files.writeString(folder.resolve("s.json"), SHEET);
    return demo("--waveform", wave.toString(), "--sheet", sheet.toString(), "--for", "4s");
  }

  private static List<JsonNode> events(CommandRunner.Result result) {
    return result.json("event").stream()
        .filter(line -> line.path("kind").asText().equals("clips-read"))
        .toList();
  }

  private static List<String> rules(JsonNode summary) {
    return StreamSupport.stream(summary.path("alarms").spliterator(), false)
        .map(alarm -> alarm.path("rule").asText())
        .toList();
  }

  private static String why(JsonNode summary, String what) {
    return StreamSupport.stream(summary.path("notWatched").spliterator(), false)
        .filter(entry -> entry.path("what").asText().equals(what))
        .map(entry -> entry.path("why").asText())
        .findFirst()
        .orElse(null);
  }

  private String verdict(String... more) {
    List<String> all = new ArrayList<>(List.of("show", "last", "--log", log()));
    all.addAll(List.of(more));
    return String.join("\n", CommandRunner.run(all.toArray(String[]::new)).out())
        .replaceAll("\\s+", " ");
  }

  @Test
  void aHeadThatIsNotClippedOnIsNoLostSignal() {
    CommandRunner.Result result = demo("--scenario", "head-clip-off");
    JsonNode summary = result.summary();
    assertThat(result.exitCode()).isZero();
    assertThat(rules(summary)).isEmpty();
    assertThat(events(result)).hasSize(1);
    assertThat(events(result).get(0).path("headJoined").asBoolean(true)).isFalse();
    assertThat(events(result).get(0).path("meterJoined").asBoolean(false)).isTrue();
    assertThat(why(summary, "head-below-meter")).isEqualTo("the head clip is off");
    assertThat(why(summary, "hum")).isEqualTo("the head clip is off");
    JsonNode levels = summary.path("levels");
    assertThat(levels.has("meterDbv")).isTrue();
    assertThat(List.of("headDbv", "headUa", "headBelowMeterDb", "humDbv")).noneMatch(levels::has);
    assertThat(verdict())
        .contains("The head clip was joined to nothing when the switch closed")
        .doesNotContain("signal gets lost");
    assertThat(verdict("--language", "de")).contains("Die Klemme am Kopf hing an nichts");
  }

  @Test
  void aReplayFindsTheSame() {
    JsonNode live = demo("--scenario", "head-clip-off").summary();
    JsonNode again =
        CommandRunner.run(
                "replay", "last", "--headless", "--speed", "max", "--json", "--log", log())
            .summary();
    assertThat(again.path("levels")).isEqualTo(live.path("levels"));
    assertThat(again.path("notWatched")).isEqualTo(live.path("notWatched"));
    assertThat(again.has("changed")).isFalse();
  }

  @Test
  void aClipThatFellOffWhileOnIsFoundWhenAllIsOver() {
    CommandRunner.Result result = demo("--scenario", "head-clip-falls", "--for", "5s");
    JsonNode summary = result.summary();
    assertThat(result.exitCode()).isEqualTo(3);
    assertThat(rules(summary)).containsExactly("head-below-meter");
    assertThat(events(result)).hasSize(1);
    assertThat(events(result).get(0).path("atMs").asDouble()).isGreaterThan(5000);
    assertThat(verdict())
        .containsSubsequence(
            "The head clip is off now; it was on before.", "work the record switch ten times");
  }

  @Test
  void joinedClipsSayNothing() throws IOException {
    CommandRunner.Result result = toneWith(",head_V,meter_V");
    assertThat(events(result)).isEmpty();
    assertThat(result.summary().path("levels").path("headBelowMeterDb").asDouble())
        .isBetween(36.0, 37.0);
    assertThat(rules(result.summary())).containsExactly("head-below-meter");
  }

  @Test
  void whatAWaveformDoesNotHaveIsNotClippedOn() throws IOException {
    CommandRunner.Result result = toneWith(",meter_V");
    JsonNode summary = result.summary();
    assertThat(rules(summary)).isEmpty();
    assertThat(why(summary, "head-below-meter")).isEqualTo("the head clip is off");
    // 0.2 V peak are -17 dBV.
    assertThat(summary.path("levels").path("meterDbv").asDouble()).isBetween(-17.2, -16.8);
  }

  @Test
  void withoutTheMeterNothingIsSaidOfTheHead() throws IOException {
    CommandRunner.Result result = toneWith(",head_V");
    JsonNode summary = result.summary();
    assertThat(rules(summary)).isEmpty();
    assertThat(why(summary, "head-below-meter")).isEqualTo("the meter clip is off");
    assertThat(summary.has("levels")).isFalse();
    assertThat(verdict())
        .contains("The meter clip was joined to nothing")
        .doesNotContain("its input stayed quiet");
  }
}
