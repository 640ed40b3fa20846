package firstamp.worlds;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;

/** Columns of a waveform file, one value every 125 us. Not thread-safe. */
final class Trace {
  static final double STEP_S = 125e-6;

  private final int length;
  private final Map<String, double[]> columns = new LinkedHashMap<>();

  Trace(double seconds) {
    length = (int) Math.round(seconds / STEP_S) + 1;
  }

  int length() {
    return length;
  }

  double seconds() {
    return (length - 1) * STEP_S;
  }

  /** The column of this name, made with zeros where it is not there yet. */
  double[] column(String name) {
    return columns.computeIfAbsent(name, key -> new double[length]);
  }

  boolean has(String name) {
    return columns.containsKey(name);
  }

  double[] copy(String name) {
    return Arrays.copyOf(column(name), length);
  }

  Path write(Path file) throws IOException {
    try (BufferedWriter out = Files.newBufferedWriter(file)) {
      out.write("t_s," + String.join(",", columns.keySet()) + "\r\n");
      StringBuilder line = new StringBuilder();
      int stride = length > 500_000 ? 16 : 1;
      for (int row = 0; row < length; row += stride) {
        line.setLength(0);
        line.append(row * 125L / 1_000_000).append('.');
        line.append(Long.toString(1_000_000 + row * 125L % 1_000_000), 1, 7);
        for (double[] column : columns.values()) {
          line.append(',').append((float) column[row]);
        }
        out.write(line.append("\r\n").toString());
      }
    }
    return file;
  }
}
