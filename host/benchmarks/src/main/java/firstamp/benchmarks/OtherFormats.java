package firstamp.benchmarks;

import java.io.BufferedReader;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.tukaani.xz.LZMA2Options;
import org.tukaani.xz.XZInputStream;
import org.tukaani.xz.XZOutputStream;

/** The same conversions in other formats: how large, how fast written and read. */
final class OtherFormats {
  static final int SLOTS = 32;
  static final int PER_READING = 160;

  /**
   * A format's figures.
   *
   * @param bytes a conversion
   * @param writes conversions a second
   * @param reads conversions a second
   */
  record Figures(double bytes, double writes, double reads) {}

  private final short[] counts;
  private final Path folder;
  private final Map<String, Figures> figures = new LinkedHashMap<>();

  OtherFormats(short[] counts, Path folder) {
    this.counts = counts;
    this.folder = folder;
  }

  Map<String, Figures> run() throws Exception {
    Path packed = folder.resolve("packed.raw");
    double writes = Clock.seconds(() -> PackedRaw.write(counts, packed));
    double reads = Clock.median(3, () -> same(PackedRaw.read(packed, counts.length)));
    byte[] packedBytes = Files.readAllBytes(packed);
    note("packed raw, 10 bits a conversion", packed, writes, reads);
    xz(packedBytes, "xz -9e of packed raw");
    xz(columns(), "xz -9e of 16-bit columns, one per channel");
    csv(false);
    csv(true);
    new ColumnFormats(this, counts, folder).run();
    SqliteFormats sqlite = new SqliteFormats(this, counts, folder);
    sqlite.conversions();
    sqlite.readings();
    return figures;
  }

  void note(String name, Path file, double writeSeconds, double readSeconds) throws Exception {
    double n = counts.length;
    figures.put(name, new Figures(Files.size(file) / n, n / writeSeconds, n / readSeconds));
    System.err.println(name + " " + figures.get(name));
    Files.delete(file);
  }

  void same(long sum) {
    long expected = 0;
    for (short count : counts) {
      expected += count;
    }
    if (sum != expected) {
      throw new IllegalStateException("read a sum of " + sum + ", expected " + expected);
    }
  }

  private byte[] columns() {
    byte[] bytes = new byte[2 * counts.length];
    int at = 0;
    for (int channel = 0; channel < 8; channel++) {
      for (int k = 0; k < counts.length; k++) {
        if (firstamp.model.samples.SamplePlan.channelAt(k).ordinal() == channel) {
          bytes[at++] = (byte) counts[k];
          bytes[at++] = (byte) (counts[k] >> 8);
        }
      }
    }
    return bytes;
  }

  private void xz(byte[] plain, String name) throws Exception {
    Path file = folder.resolve("a.xz");
    // What "xz -9e" sets: the largest dictionary, the longest matches, the deepest search.
    LZMA2Options extreme = new LZMA2Options(9);
    extreme.setNiceLen(273);
    extreme.setDepthLimit(512);
    double writes =
        Clock.seconds(
            () -> {
              try (OutputStream out = new XZOutputStream(Files.newOutputStream(file), extreme)) {
                out.write(plain);
              }
            });
    double reads =
        Clock.seconds(
            () -> {
              try (InputStream in = new XZInputStream(Files.newInputStream(file))) {
                if (in.readAllBytes().length != plain.length) {
                  throw new IllegalStateException("xz gave another length");
                }
              }
            });
    note(name, file, writes, reads);
  }

  /** A line per plan: index of the first conversion and the 32 counts. */
  private void csv(boolean gzip) throws Exception {
    Path file = folder.resolve("a.csv");
    double writes =
        Clock.seconds(
            () -> {
              OutputStream out = Files.newOutputStream(file);
              try (OutputStream to = gzip ? new GZIPOutputStream(out, 1 << 16) : out) {
                StringBuilder text = new StringBuilder();
                for (int k = 0; k < counts.length; k += SLOTS) {
                  text.append(k);
                  for (int s = 0; s < SLOTS; s++) {
                    text.append(',').append(counts[k + s]);
                  }
                  text.append('\n');
                  if (text.length() > 1 << 16 || k + SLOTS == counts.length) {
                    to.write(text.toString().getBytes(StandardCharsets.US_ASCII));
                    text.setLength(0);
                  }
                }
              }
            });
    double reads =
        Clock.seconds(
            () -> {
              InputStream in = Files.newInputStream(file);
              long sum = 0;
              try (BufferedReader lines =
                  new BufferedReader(
                      new InputStreamReader(
                          gzip ? new GZIPInputStream(in, 1 << 16) : in,
                          StandardCharsets.US_ASCII))) {
                for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                  sum += sum(line);
                }
              }
              same(sum);
            });
    note(gzip ? "CSV + gzip, a line per plan" : "CSV, a line per plan", file, writes, reads);
  }

  private static long sum(String line) {
    long sum = 0;
    int value = 0;
    for (int k = line.indexOf(',') + 1; k < line.length(); k++) {
      char c = line.charAt(k);
      if (c == ',') {
        sum += value;
        value = 0;
      } else {
        value = 10 * value + c - '0';
      }
    }
    return sum + value;
  }
}
