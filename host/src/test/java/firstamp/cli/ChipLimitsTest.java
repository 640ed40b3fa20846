package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Limits that follow from answers, on the firmware in the simulated chip, in real time. */
@Tag("chip")
@Timeout(value = 60, unit = TimeUnit.SECONDS)
class ChipLimitsTest {
  @TempDir Path folder;

  @BeforeEach
  void tools() {
    ChipRig.assumeTools();
  }

  /** 12 V, 3100 uF, surge 1.8 A, a motor that starts with it; fuse 1 A, supply 1.5 A. */
  @Test
  void aFuseOfOneAmpereDoesNotSwitchAHealthySetOff() throws Exception {
    Path sheet = folder.resolve("typed.json");
    CommandRunner.Result made =
        CommandRunner.run(
            ("sheet new "
                    + sheet
                    + " --what recorder --volts 12 --chassis negative --feed bench"
                    + " --fuse 1 --supply-limit 1.5 --motor yes")
                .split(" "));
    assertThat(made.exitCode()).as(made.err()).isZero();
    Path waveform = folder.resolve("healthy.csv");
    CommandRunner.Result healthy =
        CommandRunner.run(
            "demo",
            "--headless",
            "--speed",
            "max",
            "--for",
            "2s",
            "--save-waveform",
            waveform.toString(),
            "--log",
            folder.resolve("demo.db").toString());
    assertThat(healthy.exitCode()).as(healthy.err()).isZero();
    assertThat(Files.exists(waveform)).isTrue();

    try (ChipRig chip = ChipRig.start(folder, waveform, "--noise-counts", "0.7", "--seed", "3")) {
      CommandRunner.Result result =
          CommandRunner.run(
              "watch",
              "--port",
              chip.port(),
              "--sheet",
              sheet.toString(),
              "--accept",
              "floating-supply,above-60,tape-out",
              "--headless",
              "--json",
              "--countdown",
              "0",
              "--for",
              "1500ms",
              "--log",
              folder.resolve("chip.db").toString());
      assertThat(result.summary().path("ended").asText()).as(result.err()).isEqualTo("time");
      assertThat(result.summary().has("tripCause")).isFalse();
    }
  }
}
