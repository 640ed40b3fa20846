package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.alarm.OffWords;
import firstamp.cli.output.TextRunOutput;
import firstamp.cli.run.Sheets;
import firstamp.emulate.Scenarios;
import firstamp.model.JobSheet;
import firstamp.model.OffCause;
import firstamp.pipeline.TripFigures;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** With a plug in the wall every off says that the mains side is live, whoever switched off. */
class MainsLineTest {
  private static final String PLUG = "The mains side is still live. Pull the plug.";
  private static final String BOTH = PLUG + " The reservoir is still charged.";

  /** Where the box sits, and what stays live then. */
  private static final Map<String, String> PLACES =
      Map.of(
          "before-reservoir", BOTH,
          "after-reservoir", BOTH,
          "supply-lead", PLUG,
          "not-connected", PLUG,
          "reservoir-fed", "");

  @TempDir Path folder;

  static Stream<Arguments> causesAndPlaces() {
    List<Arguments> all = new ArrayList<>();
    for (OffCause by : OffCause.values()) {
      PLACES.forEach((place, words) -> all.add(Arguments.of(by, place, words)));
    }
    return all.stream();
  }

  private static Sheets.Ready sheet(String scenario, String kind, String place) throws Exception {
    return Sheets.parse("of a test", json(scenario, kind, place));
  }

  private static String json(String scenario, String kind, String place) throws IOException {
    ObjectNode sheet = (ObjectNode) new ObjectMapper().readTree(Scenarios.sheetJson(scenario));
    ((ObjectNode) sheet.get("supply")).put("kind", kind).put("probeSits", place);
    return sheet.toString();
  }

  @ParameterizedTest
  @MethodSource("causesAndPlaces")
  void everyCauseSaysIt(OffCause by, String place, String words) throws Exception {
    JobSheet sheet = sheet("healthy", "mains-transformer", place).effective();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    PrintStream out = new PrintStream(bytes, true, StandardCharsets.UTF_8);
    TextRunOutput text =
        new TextRunOutput(
            firstamp.cli.output.Speech.ENGLISH,
            out,
            out,
            false,
            false,
            OffWords.words(sheet),
            sheet,
            false);
    text.off(by, 1517.5);
    text.trip(new TripFigures("running", null, 412.3, 8.1, 1.0, "A", null, 0));
    List<String> lines = bytes.toString(StandardCharsets.UTF_8).lines().toList();
    assertThat(lines).hasSize(2);
    for (String line : lines) {
      if (words.isEmpty()) {
        assertThat(line).doesNotContain("mains").doesNotContain("reservoir");
      } else {
        assertThat(line).endsWith(". " + words);
      }
    }
  }

  static Stream<Arguments> scenariosAndPlaces() {
    List<Arguments> all = new ArrayList<>();
    for (String[] one :
        new String[][] {
          {"healthy", "  off by time"},
          {"wire-short", "  SWITCHED ITSELF OFF"},
          {"wire-short", "  off by trip"},
          {"wrong-polarity", "  off by rule"},
          {"look-short", "  off: the first look"},
        }) {
      PLACES.forEach((place, words) -> all.add(Arguments.of(one[0], one[1], place, words)));
    }
    return all.stream();
  }

  @ParameterizedTest
  @MethodSource("scenariosAndPlaces")
  void everyOffOfARunSaysIt(String scenario, String begun, String place, String words)
      throws IOException {
    Path sheet = folder.resolve("sheet.json");
    Files.writeString(sheet, json(scenario, "mains-transformer", place));
    CommandRunner.Result result =
        CommandRunner.run(
            "demo",
            "--headless",
            "--speed",
            "max",
            "--for",
            "2s",
            "--no-sound",
            "--scenario",
            scenario,
            "--sheet",
            sheet.toString(),
            "--log",
            folder.resolve("mains.db").toString());
    List<String> off = result.out().stream().filter(line -> line.contains(begun)).toList();
    assertThat(off).as("%s%s", result.out(), result.err()).hasSize(1);
    if (words.isEmpty()) {
      assertThat(off.get(0)).doesNotContain("mains");
    } else {
      assertThat(off.get(0)).endsWith(". " + words);
    }
  }

  @ParameterizedTest
  @MethodSource("scenariosAndPlaces")
  void aBenchSupplyHasNoMainsSide(String scenario, String begun, String place, String words)
      throws Exception {
    assertThat(OffWords.after(sheet(scenario, "bench", place).effective())).isEmpty();
  }
}
