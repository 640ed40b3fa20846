package firstamp.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;

/** The firmware's own binary in the simulated chip, its port on a pseudo-terminal, in real time. */
final class ChipRig implements AutoCloseable {
  private static final ObjectMapper MAPPER = new ObjectMapper();
  private static final Path BUILD = Path.of("..", "firmware-protocol", "firmware", "build");

  private final Process process;
  private final Path events;
  private final String port;

  private ChipRig(Process process, Path events, String port) {
    this.process = process;
    this.events = events;
    this.port = port;
  }

  /**
   * Skips the test with a warning where the chip's tools are missing; fails where they are
   * required.
   */
  static void assumeTools() {
    boolean there =
        Files.exists(BUILD.resolve("probe.elf")) && Files.exists(BUILD.resolve("probe-sim"));
    if (!there) {
      String text =
          "SKIPPED: no firmware in the simulated chip: "
              + BUILD
              + " lacks probe.elf or probe-sim (gcc-avr, libsimavr-dev)";
      System.err.println(text);
      if (Boolean.getBoolean("firstamp.requireTools")) {
        throw new AssertionError(text);
      }
    }
    Assumptions.assumeTrue(there, "simulated chip");
  }

  static ChipRig start(Path folder, Path waveform, String... more) throws IOException {
    Path events = folder.resolve("events-" + System.nanoTime() + ".jsonl");
    List<String> command =
        new ArrayList<>(
            List.of(
                BUILD.resolve("probe-sim").toString(),
                "--elf",
                BUILD.resolve("probe.elf").toString(),
                "--waveform",
                waveform.toString(),
                "--events",
                events.toString()));
    command.addAll(List.of(more));
    Process process =
        new ProcessBuilder(command).redirectError(folder.resolve("probe-sim.err").toFile()).start();
    BufferedReader out =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    String line = out.readLine();
    if (line == null || !line.startsWith("pty ")) {
      throw new IOException(
          "probe-sim said " + line + ": " + Files.readString(folder.resolve("probe-sim.err")));
    }
    return new ChipRig(process, events, line.substring(4).trim());
  }

  String port() {
    return port;
  }

  /** All events so far. */
  List<JsonNode> events() throws IOException {
    List<JsonNode> all = new ArrayList<>();
    for (String line : Files.readAllLines(events)) {
      all.add(MAPPER.readTree(line));
    }
    return all;
  }

  /** Microseconds of the last event with this switch state; -1 if there is none. */
  long lastSwitchMicros(String state) throws IOException {
    long micros = -1;
    for (JsonNode event : events()) {
      if (state.equals(event.path("supply").asText())) {
        micros = event.path("t_us").asLong();
      }
    }
    return micros;
  }

  /** Waits for the switch to be off after it was on. */
  long awaitOff(long seconds) throws IOException, InterruptedException {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
    while (System.nanoTime() < end) {
      long on = lastSwitchMicros("on");
      long off = lastSwitchMicros("off");
      if (on >= 0 && off > on) {
        return off;
      }
      Thread.sleep(20);
    }
    throw new AssertionError("the switch stayed closed: " + events());
  }

  /** Ends the simulator; the last line it writes. */
  JsonNode end() throws IOException, InterruptedException {
    process.destroy();
    if (!process.waitFor(10, TimeUnit.SECONDS)) {
      process.destroyForcibly();
      throw new AssertionError("probe-sim did not end on SIGTERM");
    }
    List<JsonNode> all = events();
    return all.get(all.size() - 1);
  }

  @Override
  public void close() {
    process.destroyForcibly();
  }
}
