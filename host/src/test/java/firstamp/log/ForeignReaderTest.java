package firstamp.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import firstamp.log.stream.ReadingGroup;
import firstamp.model.ProbeEvent;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.zip.CRC32;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The reader in another language, written from log-schema.md, gives the same stream. */
final class ForeignReaderTest {
  private static final Path SCRIPT = Path.of("..", "schemas", "read_log.py");

  @TempDir Path folder;

  private final Random random = new Random(19);

  @Test
  void readsRepackedChunksLiveChunksTailAndReadings() throws Exception {
    assumePython();
    Path file = folder.resolve("bench.db");
    List<String> expected = new ArrayList<>();
    try (BenchLog log = BenchLog.open(file, Fixture.TIME)) {
      expected.add("power-up 1 " + raw(log, expected, true) + " raw");
      log.repack(() -> true);
      expected.add("power-up 2 " + raw(log, expected, false) + " raw");
      expected.add("power-up 3 " + reduced(log, expected) + " reduced");
      assertThat(read(file)).containsExactlyInAnyOrderElementsOf(expected);
    }
  }

  /** A tone that head and meter share, so that the repack predicts one from the other. */
  private String raw(BenchLog log, List<String> expected, boolean finish) throws Exception {
    PowerUpHeader header = Fixture.header(PowerUpHeader.Stream.RAW);
    try (PowerUpWriter writer = log.begin(header, state -> {})) {
      ConversionBlock block = Fixture.block(159_000, 30_000, random);
      double speech = 0;
      for (int k = 0; k < block.counts().length; k += 4) {
        speech = 0.95 * speech + 20 * random.nextGaussian();
        int head = (int) ((33 - block.firstIndex() % 4) % 4);
        for (int at = k + head; at < k + head + 2 && at < block.counts().length; at++) {
          int value = (int) (block.counts()[at] + speech) % 1000;
          block.counts()[at] = (short) Math.max(0, value);
        }
      }
      ProbeEvent mark = new ProbeEvent.Marked(10_000_000, "mu \u00b5 \"quoted\"");
      writer.append(block);
      writer.append(mark);
      ConversionBlock after = Fixture.block(190_000, 3_333, random);
      writer.append(after);
      expected.add(run(block));
      expected.add("event mark 10000000 {\"text\": \"mu \\u00b5 \\\"quoted\\\"\"}");
      expected.add(run(after));
      if (finish) {
        writer.finish("{}", "normal", "time");
      } else {
        writer.flush();
      }
    }
    return header.uuid();
  }

  private String reduced(BenchLog log, List<String> expected) throws Exception {
    PowerUpHeader header = Fixture.header(PowerUpHeader.Stream.REDUCED);
    List<Reading> readings = Fixture.readings(160 * 900, 150, random);
    try (PowerUpWriter writer = log.begin(header, state -> {})) {
      readings.forEach(writer::append);
      writer.flush();
    }
    ReadingGroup group = new ReadingGroup();
    readings.forEach(group::add);
    expected.add("run " + 160 * 900 + " 150 " + crc(group.packed(0)));
    return header.uuid();
  }

  private static String run(ConversionBlock block) {
    ByteBuffer bytes =
        ByteBuffer.allocate(2 * block.counts().length).order(ByteOrder.LITTLE_ENDIAN);
    for (short count : block.counts()) {
      bytes.putShort(count);
    }
    return "run " + block.firstIndex() + " " + block.counts().length + " " + crc(bytes.array());
  }

  private static String crc(byte[] bytes) {
    CRC32 crc = new CRC32();
    crc.update(bytes);
    return String.format("%08x", crc.getValue());
  }

  private List<String> read(Path file) throws Exception {
    Path out = folder.resolve("out.txt");
    Process process =
        new ProcessBuilder("python3", SCRIPT.toString(), file.toString())
            .redirectErrorStream(true)
            .redirectOutput(out.toFile())
            .start();
    assertThat(process.waitFor(120, TimeUnit.SECONDS)).isTrue();
    List<String> lines = Files.readAllLines(out, StandardCharsets.UTF_8);
    assertThat(process.exitValue()).as("%s", lines).isZero();
    return lines;
  }

  private static void assumePython() {
    boolean there;
    try {
      there = new ProcessBuilder("python3", "--version").start().waitFor() == 0;
    } catch (IOException e) {
      there = false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      there = false;
    }
    if (Boolean.getBoolean("firstamp.requireTools")) {
      assertThat(there).as("python3 is needed to check schemas/read_log.py").isTrue();
    }
    assumeTrue(there, "SKIPPED: no python3, schemas/read_log.py is not checked");
  }
}
