package firstamp.conformance;

import firstamp.link.SerialProbePort;
import firstamp.model.TimeSource;
import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;

/** On the firmware in the simulated chip, in real time. */
@Tag("chip")
@Timeout(value = 60, unit = TimeUnit.SECONDS)
final class ChipConformanceTest extends ProbeConformance {
  private static final Path BUILD = Path.of("..", "firmware-protocol", "firmware", "build");

  @BeforeEach
  void tools() {
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

  @Override
  Target target() {
    return (waveform, frontEnd, folder) -> {
      Path csv = Files.writeString(folder.resolve("w.csv"), waveform);
      Path front = Files.writeString(folder.resolve("f.json"), frontEnd);
      Process process =
          new ProcessBuilder(
                  BUILD.resolve("probe-sim").toString(),
                  "--elf",
                  BUILD.resolve("probe.elf").toString(),
                  "--waveform",
                  csv.toString(),
                  "--front-end",
                  front.toString(),
                  "--noise-counts",
                  "0")
              .redirectError(folder.resolve("probe-sim.err").toFile())
              .start();
      BufferedReader out =
          new BufferedReader(
              new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
      String line = out.readLine();
      if (line == null || !line.startsWith("pty ")) {
        process.destroyForcibly();
        throw new java.io.IOException(
            "probe-sim said " + line + ": " + Files.readString(folder.resolve("probe-sim.err")));
      }
      return new Target.Started(
          SerialProbePort.open(
              line.substring(4).trim(),
              SerialProbePort.BAUD_RAW,
              folder.resolve("lock"),
              TimeSource.system()),
          process::destroyForcibly);
    };
  }
}
