package firstamp.cli;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;

/**
 * A netlist of ours run by ngspice (Debian package ngspice): its columns every 62.5 us, and what
 * they hold, worked out here and nowhere in the program.
 */
final class SpiceRun {
  private static final double STEP_S = 62.5e-6;

  private final double[][] columns;

  private SpiceRun(double[][] columns) {
    this.columns = columns;
  }

  static boolean installed() {
    try {
      Process process =
          new ProcessBuilder("ngspice", "--version")
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
      return process.waitFor() == 0;
    } catch (IOException missing) {
      return false;
    } catch (InterruptedException stop) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  /**
   * Runs a netlist.
   *
   * @param name resource in {@code firstamp/figures}
   * @param count of columns that it writes
   */
  static SpiceRun of(Path folder, String name, int count) throws IOException, InterruptedException {
    Path netlist = folder.resolve(name);
    try (InputStream in = SpiceRun.class.getResourceAsStream("/firstamp/figures/" + name)) {
      Files.copy(in, netlist);
    }
    Path out = folder.resolve("out.txt");
    Files.deleteIfExists(out);
    Process process =
        new ProcessBuilder("ngspice", "-b", name)
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve(name + ".log").toFile())
            .start();
    if (!process.waitFor(100, TimeUnit.SECONDS) || !Files.exists(out)) {
      process.destroyForcibly();
      throw new IOException(
          "ngspice on " + name + ": " + Files.readString(folder.resolve(name + ".log")));
    }
    List<String> lines = Files.readAllLines(out);
    double[][] columns = new double[count][lines.size()];
    for (int row = 0; row < lines.size(); row++) {
      String[] cells = lines.get(row).trim().split(" +");
      for (int column = 0; column < count; column++) {
        columns[column][row] = Double.parseDouble(cells[2 * column + 1]);
      }
    }
    return new SpiceRun(columns);
  }

  /**
   * Writes it as a waveform file.
   *
   * @param heads of the file's columns and which column of ours each is
   */
  Path waveform(Path file, List<String> heads, int... which) throws IOException {
    try (BufferedWriter out = Files.newBufferedWriter(file)) {
      out.write("t_s," + String.join(",", heads) + "\n");
      for (int row = 0; row < columns[0].length; row++) {
        StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "%.7f", row * STEP_S));
        for (int column : which) {
          line.append(',').append((float) columns[column][row]);
        }
        out.write(line.append('\n').toString());
      }
    }
    return file;
  }

  /** Mean of a column from one second to another. */
  double mean(int column, double fromS, double toS) {
    double sum = 0;
    int from = row(fromS);
    int to = row(toS);
    for (int row = from; row < to; row++) {
      sum += columns[column][row];
    }
    return sum / (to - from);
  }

  /** rms about the mean. */
  double rippleRms(int column, double fromS, double toS) {
    double mean = mean(column, fromS, toS);
    double squares = 0;
    int from = row(fromS);
    int to = row(toS);
    for (int row = from; row < to; row++) {
      squares += (columns[column][row] - mean) * (columns[column][row] - mean);
    }
    return Math.sqrt(squares / (to - from));
  }

  /** rms of one frequency over whole periods, by its definition. */
  double tone(int column, double hz, double fromS, double toS) {
    double re = 0;
    double im = 0;
    int from = row(fromS);
    int to = row(toS);
    for (int row = from; row < to; row++) {
      double angle = 2 * Math.PI * hz * row * STEP_S;
      re += columns[column][row] * Math.cos(angle);
      im += columns[column][row] * Math.sin(angle);
    }
    return Math.hypot(re, im) * Math.sqrt(2) / (to - from);
  }

  double highest(int column, double fromS, double toS) {
    double highest = Double.NEGATIVE_INFINITY;
    for (int row = row(fromS); row < row(toS); row++) {
      highest = Math.max(highest, columns[column][row]);
    }
    return highest;
  }

  /** Integral of the column's square. */
  double squares(int column, double fromS, double toS) {
    double sum = 0;
    for (int row = row(fromS); row < row(toS); row++) {
      sum += columns[column][row] * columns[column][row] * STEP_S;
    }
    return sum;
  }

  private int row(double seconds) {
    return (int) Math.min(columns[0].length, Math.round(seconds / STEP_S));
  }
}
