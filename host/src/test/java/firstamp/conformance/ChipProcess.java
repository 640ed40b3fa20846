package firstamp.conformance;

import firstamp.link.SerialProbePort;
import firstamp.model.TimeSource;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Assumptions;

/** The firmware in the simulated chip, as a process of its own behind a line. */
final class ChipProcess {
  private static final Path BUILD = Path.of("..", "firmware-protocol", "firmware", "build");

  private ChipProcess() {}

  /** Without the tools the test is skipped, or fails where they are required. */
  static void assumeTools() {
    boolean there =
        Files.exists(BUILD.resolve("probe.elf")) && Files.exists(BUILD.resolve("probe-sim"));
    if (!there && Boolean.getBoolean("firstamp.requireTools")) {
      throw new AssertionError("no probe.elf or probe-sim in " + BUILD);
    }
    if (!there) {
      System.err.println("SKIPPED: no firmware in the simulated chip in " + BUILD);
    }
    Assumptions.assumeTrue(there, "simulated chip");
  }

  /**
   * Starts it.
   *
   * @param waveform CSV text
   * @param more further options
   */
  static Target.Started start(String waveform, Path folder, List<String> more) throws IOException {
    Path csv = Files.writeString(folder.resolve("w.csv"), waveform);
    List<String> command = new ArrayList<>();
    command.add(BUILD.resolve("probe-sim").toString());
    command.addAll(List.of("--elf", BUILD.resolve("probe.elf").toString()));
    command.addAll(List.of("--waveform", csv.toString()));
    command.addAll(more);
    Process process =
        new ProcessBuilder(command).redirectError(folder.resolve("probe-sim.err").toFile()).start();
    BufferedReader out =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    String line = out.readLine();
    if (line == null || !line.startsWith("pty ")) {
      process.destroyForcibly();
      throw new IOException(
          "probe-sim said " + line + ": " + Files.readString(folder.resolve("probe-sim.err")));
    }
    return new Target.Started(
        SerialProbePort.open(
            line.substring(4).trim(),
            SerialProbePort.BAUD_RAW,
            folder.resolve("lock"),
            TimeSource.system()),
        process::destroyForcibly);
  }
}
