package firstamp.benchmarks;

import firstamp.model.samples.ConversionBlock;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** The simplest format: ten bits a conversion, four conversions in five bytes. */
final class PackedRaw {
  private static final int BLOCK = 3200;

  private PackedRaw() {}

  static void write(short[] counts, Path file) throws IOException {
    byte[] five = new byte[5];
    try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 16)) {
      for (int k = 0; k < counts.length; k += 4) {
        long packed =
            counts[k]
                | (long) counts[k + 1] << 10
                | (long) counts[k + 2] << 20
                | (long) counts[k + 3] << 30;
        for (int b = 0; b < 5; b++) {
          five[b] = (byte) (packed >> 8 * b);
        }
        out.write(five);
      }
    }
  }

  /** Reads blocks as a log gives them out; returns the sum of the counts. */
  static long read(Path file, int count) throws IOException {
    byte[] bytes = new byte[BLOCK / 4 * 5];
    long sum = 0;
    try (InputStream in = Files.newInputStream(file)) {
      for (int k = 0; k < count; k += BLOCK) {
        int number = Math.min(BLOCK, count - k);
        in.readNBytes(bytes, 0, number / 4 * 5);
        sum += sum(new ConversionBlock(k, unpack(bytes, number)));
      }
    }
    return sum;
  }

  /** What every reader does with a block here. */
  static long sum(ConversionBlock block) {
    int sum = 0;
    for (short count : block.counts()) {
      sum += count;
    }
    return sum;
  }

  private static short[] unpack(byte[] bytes, int number) {
    short[] counts = new short[number];
    for (int k = 0, at = 0; k < number; k += 4, at += 5) {
      int low =
          bytes[at] & 0xff
              | (bytes[at + 1] & 0xff) << 8
              | (bytes[at + 2] & 0xff) << 16
              | bytes[at + 3] << 24;
      counts[k] = (short) (low & 0x3ff);
      counts[k + 1] = (short) (low >> 10 & 0x3ff);
      counts[k + 2] = (short) (low >> 20 & 0x3ff);
      counts[k + 3] = (short) (low >>> 30 | (bytes[at + 4] & 0xff) << 2);
    }
    return counts;
  }
}
