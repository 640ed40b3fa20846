package firstamp.log;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Damaged files are refused or read: without an exception, a hang or more than 256 MiB. */
final class LogMutationTest {
  private static final long MOST_KIB = 256 << 10;

  @TempDir Path folder;

  @Test
  void refusesOrReadsFiveHundredDamagedFiles() throws Exception {
    damage(500, 4);
  }

  @Test
  @Tag("full")
  void refusesOrReadsTenThousandDamagedFiles() throws Exception {
    damage(10_000, 5);
  }

  private void damage(int files, long seed) throws Exception {
    Path output = folder.resolve("output.txt");
    Process reader =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx96m",
                "-XX:ReservedCodeCacheSize=48m",
                "-cp",
                System.getProperty("java.class.path"),
                "firstamp.log.DamagedLogs",
                Files.createDirectory(folder.resolve("files")).toString(),
                Integer.toString(files),
                Long.toString(seed))
            .redirectErrorStream(true)
            .redirectOutput(output.toFile())
            .start();
    try {
      assertThat(reader.waitFor(60 + files, TimeUnit.SECONDS)).isTrue();
    } finally {
      reader.destroyForcibly();
    }
    String said = Files.readString(output, StandardCharsets.UTF_8);
    Matcher counts = Pattern.compile("refused (\\d+) read (\\d+) kib (\\d+)").matcher(said);
    assertThat(said).doesNotContain(" times: ");
    assertThat(counts.find()).as(said).isTrue();
    System.out.println("damaged logs: " + said.strip());
    int refused = Integer.parseInt(counts.group(1));
    int read = Integer.parseInt(counts.group(2));
    assertThat(refused + read).isEqualTo(files);
    assertThat(refused).isGreaterThan(files / 4);
    assertThat(read).isGreaterThan(files / 20);
    assertThat(Long.parseLong(counts.group(3))).isLessThanOrEqualTo(MOST_KIB);
  }
}
