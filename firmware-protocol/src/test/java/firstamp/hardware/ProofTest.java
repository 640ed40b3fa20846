package firstamp.hardware;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The rows of {@code hardware/proof}: closing, shorts, drive, single faults, zeros and inputs, in
 * ngspice. All of them, and the page, only with {@code -Pfull}; rows that are there are not run
 * again.
 */
@ToolCondition.Needs("ngspice")
class ProofTest {
  private static final Path KEPT = Path.of("target/proof").toAbsolutePath();

  @TempDir Path folder;

  @Test
  void drawnRowsHold() throws Exception {
    String printed = prove(KEPT.toString(), "--drawn");
    assertThat(printed).containsPattern("(?m)^[5-9][0-9] rows, 0 failed$");
  }

  @Test
  @Tag("full")
  void everyRowHoldsAndThePageIsWritten() throws Exception {
    String commit = output(List.of("git", "rev-parse", "--short", "HEAD")).strip();
    String page = Path.of("hardware/proof.md").toAbsolutePath().toString();
    String printed = prove(KEPT.toString(), "--report", page, "--commit", commit);
    assertThat(printed).containsPattern("(?m)^[0-9]{4} rows, 0 failed$");
  }

  @Test
  @Tag("full")
  void eachProtectionTakenAwayTurnsItsRowRed() throws Exception {
    assertThat(prove(folder.toString(), "--broken")).doesNotContain("STAYED GREEN", "no result");
  }

  @Test
  @Tag("full")
  void eachProtectionTakenOutOfTheProgramTurnsACheckRed() throws Exception {
    String printed =
        output(List.of("python3", "-B", "hardware/proof/broken_program.py", folder.toString()));
    assertThat(printed).doesNotContain("STAYED GREEN");
    assertThat(printed.lines()).hasSizeGreaterThan(20);
  }

  private String prove(String... arguments) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(List.of("python3", "-B", "hardware/proof/prove.py"));
    command.addAll(List.of(arguments));
    return output(command);
  }

  private String output(List<String> command) throws IOException, InterruptedException {
    Path printed = folder.resolve("printed.txt");
    Process process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(printed.toFile())
            .start();
    assertThat(process.waitFor(3, TimeUnit.HOURS)).isTrue();
    assertThat(process.exitValue()).as(Files.readString(printed)).isZero();
    return Files.readString(printed);
  }
}
