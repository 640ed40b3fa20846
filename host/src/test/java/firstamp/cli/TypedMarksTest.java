package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.cli.output.ExitCode;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Words on standard input: a mark is a note, what was done to the set is an event. */
final class TypedMarksTest {
  @TempDir Path folder;

  private CommandRunner.Result typing(String... lines) {
    synchronized (CommandRunner.class) {
      InputStream before = System.in;
      try {
        String text = String.join("\n", lines) + "\n";
        System.setIn(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));
        return CommandRunner.run(
            "demo",
            "--headless",
            "--json",
            "--keys",
            "--no-sound",
            "--speed",
            "max",
            "--scenario",
            "lost-head",
            "--for",
            "4s",
            "--log",
            folder.resolve("log.db").toString());
      } finally {
        System.setIn(before);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "clip on C4 leg",
        "Clip on C4 leg",
        "worked once: record switch",
        "to be tapped: head plug",
        "mode: soak",
        "record off",
        "signal gone at P2",
      })
  void aPhraseOfBeforeIsANoteAndTheExitCodeStays(String phrase) {
    CommandRunner.Result result = typing("mark " + phrase);
    assertThat(result.json("mark")).extracting(m -> m.path("text").asText()).containsOnly(phrase);
    assertThat(result.json("event")).isEmpty();
    assertThat(result.summary().path("outcome").asText()).isEqualTo("alarm");
    assertThat(result.exitCode()).isEqualTo(3);
  }

  @Test
  void whatWasDoneIsAnEventAndAReplayShowsTheSame() {
    CommandRunner.Result result =
        typing(
            "record on",
            "changed C7 lifted",
            "started motor",
            "clip C4 leg",
            "CLIP OFF",
            "record unknown",
            "record off",
            "clip",
            "clipon");
    assertThat(untimed(result))
        .containsExactly(
            "{\"type\":\"event\",\"kind\":\"record-on\"}",
            "{\"type\":\"event\",\"kind\":\"change\",\"text\":\"C7 lifted\"}",
            "{\"type\":\"event\",\"kind\":\"start\",\"text\":\"motor\"}",
            "{\"type\":\"event\",\"kind\":\"clip\",\"act\":\"held\",\"name\":\"C4 leg\"}",
            "{\"type\":\"event\",\"kind\":\"clip\",\"act\":\"off\"}",
            "{\"type\":\"event\",\"kind\":\"record-unknown\"}",
            "{\"type\":\"event\",\"kind\":\"record-off\"}");
    assertThat(result.json("event")).allMatch(line -> JsonSchemas.against(line).isEmpty());
    assertThat(result.json("mark")).isEmpty();
    assertThat(result.err()).contains("\"clip\" is not known").contains("\"clipon\" is not known");
    assertThat(result.summary().path("outcome").asText()).isEqualTo("normal");
    assertThat(result.exitCode()).isEqualTo(ExitCode.NORMAL);
    CommandRunner.Result replay =
        CommandRunner.run(
            "replay",
            "last",
            "--headless",
            "--json",
            "--speed",
            "max",
            "--log",
            folder.resolve("log.db").toString());
    // Only a replay knows before closing when the switch will close.
    assertThat(untimed(replay)).isEqualTo(untimed(result));
    ObjectNode summary = (ObjectNode) replay.summary();
    assertThat(summary.remove("replay").asBoolean()).isTrue();
    assertThat(summary.has("rules")).as("judged by today's rules").isFalse();
    assertThat(summary).isEqualTo(result.summary());
  }

  private static List<String> untimed(CommandRunner.Result result) {
    return result.json("event").stream()
        .map(line -> line.toString().replaceAll(",\"atMs\":[-0-9.]+", ""))
        .toList();
  }

  @Test
  void theVersionsOfRulesAndLogAreNamed() {
    assertThat(CommandRunner.run("--version").out())
        .isEqualTo(List.of("firstamp (not packaged)", "rules 4, bench log schema 3"));
  }
}
