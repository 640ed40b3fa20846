package firstamp.worlds;

import com.fasterxml.jackson.databind.JsonNode;
import firstamp.cli.CommandRunner;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.StreamSupport;

/**
 * What the program said of one power-up.
 *
 * @param world that was powered up
 * @param seed it was drawn from
 * @param exitCode of the program
 * @param summary its last line
 * @param log where the power-up was kept
 */
record Told(World world, long seed, int exitCode, JsonNode summary, Path log) {
  /** Runs a power-up through the whole program, from the converter to the summary. */
  static Told of(World world, long seed, Path folder) throws IOException {
    Path wave = world.trace().write(folder.resolve("world.csv"));
    Path sheet = Files.writeString(folder.resolve("sheet.json"), world.sheet());
    Path front = Files.writeString(folder.resolve("front.json"), world.frontEnd());
    Path log = folder.resolve("log.db");
    Files.deleteIfExists(log);
    CommandRunner.Result result =
        CommandRunner.run(
            "demo",
            "--headless",
            "--json",
            "--speed",
            "max",
            "--seed",
            Long.toString(seed),
            "--waveform",
            wave.toString(),
            "--sheet",
            sheet.toString(),
            "--front-end",
            front.toString(),
            "--log",
            log.toString());
    if (result.json("summary").isEmpty()) {
      throw new AssertionError(world.kind() + " " + seed + ": no summary: " + result.err());
    }
    return new Told(world, seed, result.exitCode(), result.summary(), log);
  }

  private List<JsonNode> alarms() {
    return StreamSupport.stream(summary.path("alarms").spliterator(), false).toList();
  }

  /** When the first alarm that has to come came, seconds since closing; NaN = never. */
  double raisedS() {
    return alarms().stream()
        .filter(alarm -> world.must().contains(alarm.path("rule").asText()))
        .mapToDouble(alarm -> alarm.path("atMs").asDouble() / 1000)
        .min()
        .orElse(Double.NaN);
  }

  /** A healthy set was called faulty, or a fault was not raised in time. */
  boolean wrong() {
    return world.healthy()
        ? exitCode != 0
        : !(raisedS() >= world.fromS() - 0.1 && raisedS() <= world.fromS() + world.withinS());
  }

  /** Seed, outcome and alarms in lines to read. */
  String lines() {
    StringBuilder text =
        new StringBuilder(
            String.format(
                Locale.ROOT,
                "  seed %d exit %d %s: fault %.2f times the limit from %.2f s, raised at %.2f s",
                seed,
                exitCode,
                summary.path("outcome").asText(),
                world.beyond(),
                world.fromS(),
                raisedS()));
    for (JsonNode alarm : alarms()) {
      text.append("\n      ").append(alarm.path("rule").asText()).append(' ');
      text.append(alarm.path("sinceMs").asText()).append(' ').append(alarm.path("text").asText());
    }
    return text.toString();
  }

  /** The verdict as a person reads it. */
  List<String> verdict() {
    return CommandRunner.run("show", "last", "--log", log.toString()).out();
  }
}
