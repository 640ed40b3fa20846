package firstamp.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import firstamp.model.ProbeEvent;
import firstamp.model.samples.ConversionBlock;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CopyOnWriteArrayList;

/**
 * Writes a bench log on a small disk of its own that fills up, is given room, becomes read-only and
 * writable again. Runs in a process with its own mounts (see {@link LogDiskTest}).
 */
final class DiskTrouble {
  private static final int BLOCK = 16_000;

  private final Path disk;
  private final Random random = new Random(12);
  private final Fixture.Kept expected = new Fixture.Kept();
  private final List<LogState> states = new CopyOnWriteArrayList<>();
  private long index;

  private DiskTrouble(Path disk) {
    this.disk = disk;
  }

  /**
   * Does it, and says "all kept" at the end.
   *
   * @param args folder where the small disk is mounted
   */
  public static void main(String[] args) throws Exception {
    new DiskTrouble(Path.of(args[0])).run();
  }

  private void run() throws Exception {
    Path ballast = Files.write(disk.resolve("ballast"), new byte[1_500_000]);
    Path file = disk.resolve("bench.db");
    try (BenchLog log = BenchLog.open(file, Fixture.TIME)) {
      try (PowerUpWriter writer =
          log.begin(Fixture.header(PowerUpHeader.Stream.RAW), states::add)) {
        untilItFails(writer, LogException.Kind.FULL);
        assertThat(log.list()).hasSize(1);
        // Nothing holds the file open for writing while nothing can be written.
        mount("remount,ro");
        LogException failed = catchThrowableOfType(LogException.class, writer::flush);
        assertThat(failed.kind()).isEqualTo(LogException.Kind.READ_ONLY);
        append(writer);
        assertThat(log.list()).hasSize(1);
        mount("remount,rw");
        Files.delete(ballast);
        compareAfterFlush(log, writer);
        append(writer);
        writer.finish("{}", "normal", "time");
        compareAfterFlush(log, writer);
      }
      assertThat(states).extracting(LogState::logging).containsExactly(false, true);
      assertThat(log.check()).isEmpty();
    }
    System.out.println("all kept: " + index + " conversions, " + Files.size(file) + " bytes");
  }

  private void untilItFails(PowerUpWriter writer, LogException.Kind kind) {
    for (int n = 0; n < 500; n++) {
      append(writer);
      try {
        writer.flush();
      } catch (LogException failed) {
        assertThat(failed.kind()).as(failed.getMessage()).isEqualTo(kind);
        append(writer);
        return;
      }
    }
    throw new AssertionError("the disk never filled up");
  }

  private void compareAfterFlush(BenchLog log, PowerUpWriter writer) throws LogException {
    writer.flush();
    assertThat(writer.dropped()).isZero();
    Fixture.Kept kept = new Fixture.Kept();
    log.find("1").replay(kept);
    assertThat(kept.items).isEqualTo(expected.items);
  }

  private void append(PowerUpWriter writer) {
    ConversionBlock block = Fixture.block(index, BLOCK, random);
    ProbeEvent mark = new ProbeEvent.Marked(index, "after " + index);
    index += BLOCK;
    writer.append(block);
    writer.append(mark);
    expected.conversions(block);
    expected.event(mark);
  }

  private void mount(String options) throws IOException, InterruptedException {
    int failed = 1;
    for (int n = 0; n < 20 && failed != 0; n++) {
      // Busy while the writer tries once more.
      failed =
          new ProcessBuilder("mount", "-o", options, disk.toString())
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start()
              .waitFor();
      Thread.sleep(failed == 0 ? 0 : 50);
    }
    assertThat(failed).isZero();
  }
}
