package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import firstamp.emulate.Scenarios;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A table that was exported is tried again as a waveform. */
class ExportAsWaveformTest {
  @TempDir private Path folder;

  private Path sheet() throws Exception {
    return Files.writeString(folder.resolve("sheet.json"), Scenarios.sheetJson("healthy"));
  }

  @Test
  void anExportedPowerUpRunsAgainWithTheSameFigures() throws Exception {
    Path log = folder.resolve("first.db");
    CommandRunner.Result first =
        CommandRunner.run(
            "demo",
            "--headless",
            "--json",
            "--speed",
            "max",
            "--for",
            "3s",
            "--log",
            log.toString());
    assertThat(first.exitCode()).as(first.err()).isZero();
    Path table = folder.resolve("first.csv");
    CommandRunner.Result export =
        CommandRunner.run(
            "export", "last", "--format", "csv", "--to", table.toString(), "--log", log.toString());
    assertThat(export.exitCode()).as(export.err()).isZero();
    Path sheet = sheet();

    CommandRunner.Result again =
        CommandRunner.run(
            "demo",
            "--headless",
            "--json",
            "--speed",
            "max",
            "--for",
            "2s",
            "--waveform",
            table.toString(),
            "--sheet",
            sheet.toString(),
            "--log",
            folder.resolve("again.db").toString());

    assertThat(again.exitCode()).as(again.err()).isIn(0, 3);
    JsonNode supply = again.summary().path("supply");
    assertThat(again.summary().path("ended").asText()).isEqualTo("time");
    assertThat(supply.path("steadyA").asDouble())
        .isCloseTo(first.summary().path("supply").path("steadyA").asDouble(), within(0.005));
  }

  @Test
  void aTableFromBeforeTheSwitchClosedIsRefusedWithTheReason() throws Exception {
    Path table =
        Files.writeString(
            folder.resolve("off.csv"), "t_s,supply_V,supply_A,supply_A_highest\n-0.02,0,0,0\n");
    Path sheet = sheet();
    CommandRunner.Result result =
        CommandRunner.run(
            "demo",
            "--headless",
            "--waveform",
            table.toString(),
            "--sheet",
            sheet.toString(),
            "--log",
            folder.resolve("x.db").toString());
    assertThat(result.exitCode()).isNotZero();
    assertThat(result.err()).contains("no row from closing on");
  }
}
