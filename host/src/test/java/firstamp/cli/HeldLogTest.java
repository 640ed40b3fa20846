package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A bench log that another program holds, on the command line. */
class HeldLogTest {
  @TempDir Path folder;

  private CommandRunner.Result demo(String... more) {
    List<String> line =
        new ArrayList<>(
            List.of("demo", "--headless", "--speed", "max", "--for", "300ms", "--no-sound"));
    line.addAll(List.of(more));
    return CommandRunner.run(line.toArray(String[]::new));
  }

  @Test
  void nothingIsSwitchedOnAndNothingIsSaidToBeKept() throws SQLException {
    Path log = folder.resolve("lock.db");
    assertThat(demo("--log", log.toString()).exitCode()).isZero();
    CommandRunner.Result held;
    try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + log);
        Statement statement = other.createStatement()) {
      statement.execute("BEGIN EXCLUSIVE");
      held = demo("--log", log.toString());
      statement.execute("ROLLBACK");
    }
    assertThat(held.exitCode()).as(held.err()).isEqualTo(74);
    assertThat(held.out()).noneMatch(line -> line.endsWith(" on"));
    assertThat(held.err())
        .contains("nothing was switched on. Another program holds lock.db. Close that program")
        .contains("Nothing of this power-up was kept.")
        .doesNotContain("kept in");
    assertThat(CommandRunner.run("list", "--log", log.toString(), "--json").out()).hasSize(1);
  }

  /** The invented disk fills up while the set is on. */
  @Test
  void aDiskThatFillsUpEndsWithWhatWasKept() {
    Path log = folder.resolve("full.db");
    CommandRunner.Result full =
        CommandRunner.run(
            "demo",
            "--headless",
            "--speed",
            "max",
            "--for",
            "5s",
            "--scenario",
            "disk-full",
            "--no-sound",
            "--log",
            log.toString());
    assertThat(full.exitCode()).as(full.err()).isEqualTo(74);
    assertThat(full.err())
        .containsPattern(
            "no room on the disk; make room there\\. Kept: power-up 1 in .*full\\.db, [0-9.]+ s of readings; `firstamp show 1`")
        .doesNotContain("another program")
        .doesNotContain("..");
    assertThat(String.join("\n", full.out()))
        .contains(
            "The bench log is not being written. The disk with full.db is full. Make room on it;")
        .doesNotContainPattern("[a-z] Make room");
    CommandRunner.Result shown = CommandRunner.run("show", "1", "--log", log.toString());
    assertThat(shown.exitCode()).as(shown.err()).isZero();
  }
}
