package firstamp.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.emulate.Scenarios;
import firstamp.log.BenchLog;
import firstamp.log.SetNotes;
import firstamp.model.TimeSource;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;

/** A log of four power-ups, and the command line run on it. */
abstract class FourPowerUps {
  static final String HOSTILE =
      "</title><script>alert('1')</script><img src=http://127.0.0.1/x>\"&\u202e";

  @TempDir static Path folder;
  static Path log;

  /** Power-up 1 and 3: a healthy set with different noise; 2: its wire short; 4: hostile names. */
  @BeforeAll
  static void logFourPowerUps() throws Exception {
    log = folder.resolve("bench.db");
    demo("healthy", "--seed", "1");
    demo("wire-short");
    demo("healthy", "--seed", "2", "--label", "after the wire went back");
    ObjectMapper mapper = new ObjectMapper();
    ObjectNode sheet = (ObjectNode) mapper.readTree(Scenarios.sheetJson("wire-short"));
    ((ObjectNode) sheet.path("set")).put("name", HOSTILE);
    sheet.path("rails").forEach(rail -> ((ObjectNode) rail).put("name", HOSTILE));
    ObjectNode path = sheet.putObject("path");
    path.putArray("points").addObject().put("name", HOSTILE);
    ObjectNode wire = sheet.putArray("unknownWires").addObject();
    wire.put("name", HOSTILE);
    wire.putArray("places").add(HOSTILE);
    Path file = folder.resolve("hostile.json");
    Files.writeString(file, mapper.writeValueAsString(sheet));
    demo("wire-short", "--sheet", file.toString(), "--label", HOSTILE);
    try (BenchLog notes = BenchLog.open(log, TimeSource.system())) {
      String cut = HOSTILE;
      SetNotes.add(notes, HOSTILE, new SetNotes.ColdCheck(1000, cut, cut, cut, 47_000.0, cut, cut));
      SetNotes.add(
          notes, HOSTILE, new SetNotes.ColdCheck(2000, "ohms", cut, cut, null, "ohm", null));
      SetNotes.add(
          notes, HOSTILE, new SetNotes.Trial(3000, cut, cut, 4L, "{\"verdict\":\"better\"}"));
      SetNotes.add(notes, HOSTILE, new SetNotes.Trial(3000, "W3", "P7", null, cut));
    }
  }

  static CommandRunner.Result demo(String scenario, String... more) {
    List<String> arguments =
        new ArrayList<>(List.of("demo", "--headless", "--speed", "max", "--for", "4s", "--log"));
    arguments.addAll(List.of(log.toString(), "--scenario", scenario));
    arguments.addAll(List.of(more));
    return CommandRunner.run(arguments.toArray(String[]::new));
  }

  static CommandRunner.Result run(String... arguments) {
    List<String> all = new ArrayList<>(List.of(arguments));
    all.addAll(List.of("--log", log.toString()));
    return CommandRunner.run(all.toArray(String[]::new));
  }

  static JsonNode figure(CommandRunner.Result result, String key, int rail) {
    return result.json("figure").stream()
        .filter(
            line -> line.path("figure").asText().equals(key) && line.path("rail").asInt(0) == rail)
        .findFirst()
        .orElseThrow(() -> new AssertionError("no figure " + key + " in " + result.out()));
  }
}
