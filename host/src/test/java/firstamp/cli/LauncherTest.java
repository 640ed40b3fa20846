package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.Arrays;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The launcher on a copy of itself beside a jar of these classes: the classes kept for quick starts
 * are used, and nothing that can be wrong with them stops a start or gets into what it prints.
 */
@Timeout(value = 180, unit = TimeUnit.SECONDS)
class LauncherTest {
  @TempDir static Path folder;
  private static LauncherTree tree;
  private static byte[] good;

  @BeforeAll
  static void build() throws Exception {
    assumeTrue(File.separatorChar == '/', "the launcher of this system is another one");
    tree = LauncherTree.of(folder.resolve("whole"), "nothing");
    assertThat(tree.start()).matches(LauncherTree.Start::prepared);
    assertThat(tree.archive()).as(tree.log()).exists();
    good = Files.readAllBytes(tree.archive());
  }

  private static void keep(byte[] archive) throws IOException {
    Files.deleteIfExists(tree.archive());
    Files.write(tree.archive(), archive);
  }

  @AfterEach
  void putBack() throws IOException {
    keep(good);
  }

  @Test
  void takesItsClassesFromWhatWasKept() throws Exception {
    assertThat(tree.sourceOfMain()).isEqualTo("shared objects file (top)");
  }

  @Test
  void startsFromTheJarWhereWhatWasKeptIsDamaged() throws Exception {
    byte[] damaged = good.clone();
    for (int at = damaged.length / 2; at < damaged.length / 2 + 4096; at++) {
      damaged[at] ^= 0x55;
    }
    keep(damaged);
    assertThat(tree.sourceOfMain()).startsWith("file:").endsWith("firstamp-host.jar");
  }

  @Test
  void startsFromTheJarWhereWhatWasKeptIsRubbish() throws Exception {
    keep(new byte[good.length]);
    assertThat(tree.sourceOfMain()).startsWith("file:").endsWith("firstamp-host.jar");
  }

  @Test
  void preparesAgainWhereWhatWasKeptIsCutOff() throws Exception {
    keep(Arrays.copyOf(good, good.length / 3));
    assertThat(tree.start()).matches(LauncherTree.Start::prepared);
    assertThat(tree.sourceOfMain()).isEqualTo("shared objects file (top)");
    good = Files.readAllBytes(tree.archive());
  }

  @Test
  void preparesAgainForANewerJar() throws Exception {
    Path jar = tree.target().resolve("firstamp-host.jar");
    FileTime prepared = Files.getLastModifiedTime(tree.target().resolve("quick-start.for"));
    Files.setLastModifiedTime(jar, FileTime.fromMillis(prepared.toMillis() + 1000));
    assertThat(tree.start()).matches(LauncherTree.Start::prepared);
    assertThat(tree.sourceOfMain()).isEqualTo("shared objects file (top)");
    good = Files.readAllBytes(tree.archive());
  }

  @Test
  void startsAllTheSameWhereNothingCanBeKeptAndDoesNotTryAgain() throws Exception {
    LauncherTree without = LauncherTree.of(folder.resolve("without"), "QuickStart");
    assertThat(without.start()).matches(LauncherTree.Start::prepared);
    assertThat(without.archive()).doesNotExist();
    assertThat(without.start()).isEqualTo(LauncherTree.Start.QUIET);
  }
}
