package firstamp.log;

import firstamp.model.ProbeEvent;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.SamplePlan;
import java.nio.ByteOrder;
import java.nio.MappedByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Random;

/**
 * Writes power-ups until it is killed, and says in a file of its own how far it has come.
 *
 * <p>That file is mapped into memory: its content outlives the process, whenever it is killed. The
 * value of every conversion follows from its index, so that the reader needs no copy.
 */
final class KilledWriter {
  /** How far: one long each, in the feeder's file. */
  static final int POWER_UP = 0, FIRST = 8, DELIVERED = 16, MARKS = 24, FINISHED = 32, BYTES = 64;

  /** Conversions of one delivery: 8 ms. */
  private static final int BLOCK = 128;

  private static final long NANOS_PER_CONVERSION = 62_500;

  private KilledWriter() {}

  /** The value of a conversion. */
  static short count(long index) {
    long mixed = index * 0x9E3779B97F4A7C15L;
    mixed = (mixed ^ mixed >>> 29) * 0xBF58476D1CE4E5B9L;
    return (short) (90 * SamplePlan.channelAt(index).ordinal() + (mixed >>> 61));
  }

  /**
   * Runs until it is killed.
   *
   * @param args bench log, feeder's file, seed, {@code live} (16 000 conversions/s) or {@code fast}
   */
  public static void main(String[] args) throws Exception {
    Random random = new Random(Long.parseLong(args[2]));
    boolean live = args[3].equals("live");
    try (FileChannel channel =
            FileChannel.open(Path.of(args[1]), StandardOpenOption.READ, StandardOpenOption.WRITE);
        BenchLog log = BenchLog.open(Path.of(args[0]), Fixture.TIME)) {
      MappedByteBuffer told = channel.map(FileChannel.MapMode.READ_WRITE, 0, BYTES);
      told.order(ByteOrder.nativeOrder());
      warmUp();
      while (true) {
        powerUp(log, random, live, told);
        log.repack(() -> true);
      }
    }
  }

  private static void powerUp(BenchLog log, Random random, boolean live, MappedByteBuffer told)
      throws Exception {
    // The end of a group of 10 s is never far: what happens there is worth most of the kills.
    long first =
        StreamStore.GROUP_CONVERSIONS * (1L + random.nextInt(50)) - 1 - random.nextInt(24_000);
    long end = first + (live ? 8_000 + random.nextInt(48_000) : random.nextInt(500_000));
    try (PowerUpWriter writer = log.begin(Fixture.header(PowerUpHeader.Stream.RAW), state -> {})) {
      told.putLong(FINISHED, 0);
      told.putLong(FIRST, first);
      told.putLong(DELIVERED, first);
      told.putLong(MARKS, 0);
      told.putLong(POWER_UP, writer.number());
      long begin = System.nanoTime();
      long marks = 0;
      for (long index = first; index < end; index += BLOCK) {
        short[] counts = new short[BLOCK];
        for (int k = 0; k < BLOCK; k++) {
          counts[k] = count(index + k);
        }
        while (live && System.nanoTime() - begin < (index + BLOCK - first) * NANOS_PER_CONVERSION) {
          Thread.sleep(1);
        }
        writer.append(new ConversionBlock(index, counts));
        told.putLong(DELIVERED, index + BLOCK);
        if (index / BLOCK % 8 == 0) {
          writer.append(new ProbeEvent.Marked(SamplePlan.microsOf(index + BLOCK), "mark " + marks));
          told.putLong(MARKS, ++marks);
        }
        if (!live) {
          writer.awaitRoom();
        }
      }
      writer.finish("{}", "normal", "time");
      told.putLong(FINISHED, 1);
    }
  }

  /** Loads what writing needs, so that the first power-up is written as fast as the hundredth. */
  private static void warmUp() throws Exception {
    Path folder = java.nio.file.Files.createTempDirectory("firstamp-warm");
    Path file = folder.resolve("warm.db");
    try (BenchLog log = BenchLog.open(file, Fixture.TIME)) {
      try (PowerUpWriter writer =
          log.begin(Fixture.header(PowerUpHeader.Stream.RAW), state -> {})) {
        writer.append(Fixture.block(0, 400_000, new Random(1)));
        writer.finish("{}", "normal", "time");
      }
    }
    java.nio.file.Files.delete(file);
    java.nio.file.Files.delete(folder);
  }
}
