package firstamp.emulate.wave;

import firstamp.emulate.bench.Bench;
import firstamp.emulate.bench.Joined;
import firstamp.emulate.box.Box;
import firstamp.emulate.box.BoxText;
import firstamp.model.samples.Channel;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Keeps what was at the clips while the switch was closed the first time, thinned to rows between
 * which straight lines are right within a tenth of a count of the nominal build.
 */
public final class WaveformRecorder {
  private static final Channel[] COLUMNS = {
    Channel.V, Channel.I, Channel.R1, Channel.R2, Channel.R3, Channel.H, Channel.M
  };
  private static final double[] TOLERANCE = {
    0.1 * 60 / 1024,
    0.1 * 0.4 / 1024,
    0.1 * 40 / 1024,
    0.1 * 40 / 1024,
    0.1 * 40 / 1024,
    0.1 * 0.02 / 1024,
    0.1 * 5 / 1024
  };
  private static final int LONGEST_RUN = 160;
  private static final String FRONT_END_ENDING = ".front-end.json";

  private final Box box;
  private final List<double[]> kept = new ArrayList<>();
  private final List<double[]> held = new ArrayList<>();
  private double closedS = Double.NaN;
  private boolean done;
  private boolean looking;
  private double lookS;
  private double lookVoltSeconds;
  private double lookAmpereSeconds;
  private double lookV;
  private double lookA;

  /** Of a run on this box. */
  public WaveformRecorder(Box box) {
    this.box = box;
  }

  public void joined(Joined joined, double nowS) {
    looking = joined == Joined.LOOK && Double.isNaN(closedS);
    lookS = nowS;
    if (joined == Joined.CLOSED && Double.isNaN(closedS)) {
      closedS = nowS;
    } else if (!Double.isNaN(closedS)) {
      done = true;
    }
  }

  /** Takes what is at the clips now. */
  public void sample(Bench bench, double nowS) {
    if (looking) {
      look(bench, nowS);
    }
    if (Double.isNaN(closedS) || done) {
      return;
    }
    if (!kept.isEmpty() && nowS - closedS <= last()[0]) {
      return;
    }
    double[] row = new double[COLUMNS.length + 1];
    row[0] = nowS - closedS;
    for (int c = 0; c < COLUMNS.length; c++) {
      row[c + 1] = bench.value(COLUMNS[c]);
    }
    if (kept.isEmpty()) {
      double[] first = row.clone();
      first[0] = 0;
      kept.add(first);
    }
    if (held.size() >= LONGEST_RUN || !straightTo(row)) {
      kept.add(held.get(held.size() - 1));
      held.clear();
    }
    held.add(row);
  }

  private double[] last() {
    return held.isEmpty() ? kept.get(kept.size() - 1) : held.get(held.size() - 1);
  }

  private void look(Bench bench, double nowS) {
    lookV = bench.value(Channel.V);
    lookA = bench.value(Channel.J);
    lookVoltSeconds += lookV * (nowS - lookS);
    lookAmpereSeconds += lookA * (nowS - lookS);
    lookS = nowS;
  }

  private boolean straightTo(double[] row) {
    double[] from = kept.get(kept.size() - 1);
    for (double[] between : held) {
      double share = (between[0] - from[0]) / (row[0] - from[0]);
      for (int c = 1; c < row.length; c++) {
        double line = from[c] + (row[c] - from[c]) * share;
        if (Math.abs(line - between[c]) > TOLERANCE[c - 1]) {
          return false;
        }
      }
    }
    return true;
  }

  int rows() {
    return kept.size() + (held.isEmpty() ? 0 : 1);
  }

  /** Writes the waveform file, rails whose clip is open without column, and the front-end file. */
  public void write(Path csv) throws IOException {
    if (kept.isEmpty()) {
      throw new IOException(csv + ": nothing to write: the switch never closed");
    }
    writeRows(csv);
    String name = csv.getFileName().toString().replaceFirst("\\.csv$", "") + FRONT_END_ENDING;
    Files.writeString(csv.resolveSibling(name), frontEnd());
  }

  /** The box, and the look as a resistance and a capacitance. */
  private String frontEnd() {
    if (lookVoltSeconds == 0) {
      return "{" + BoxText.members(box) + "}\n";
    }
    double ohm = Math.min(1e9, lookV / Math.max(lookA, 1e-9));
    double farad = Math.max(0, (lookAmpereSeconds - lookVoltSeconds / ohm) / lookV);
    double supplyV = lookV + lookA * WaveformBench.LOOK_RESISTOR_OHM;
    return String.format(
        Locale.ROOT,
        "{%s,\"look\":{\"supplyV\":%.4f,\"loadOhm\":%.2f,\"loadUf\":%.1f}}%n",
        BoxText.members(box),
        supplyV,
        ohm,
        farad * 1e6);
  }

  private void writeRows(Path csv) throws IOException {
    try (BufferedWriter out = Files.newBufferedWriter(csv)) {
      out.write("t_s");
      for (int c = 0; c < COLUMNS.length; c++) {
        if (!Double.isNaN(kept.get(0)[c + 1])) {
          out.write("," + WaveformFile.COLUMNS.get(c));
        }
      }
      out.write("\r\n");
      for (double[] row : kept) {
        write(out, row);
      }
      if (!held.isEmpty()) {
        write(out, held.get(held.size() - 1));
      }
    }
  }

  private static void write(BufferedWriter out, double[] row) throws IOException {
    out.write(String.format(Locale.ROOT, "%.7f", row[0]));
    for (int c = 1; c < row.length; c++) {
      if (!Double.isNaN(row[c])) {
        out.write(String.format(Locale.ROOT, ",%.6g", row[c]));
      }
    }
    out.write("\r\n");
  }
}
