package firstamp.emulate.wave;

import firstamp.model.text.Wording.Phrase;
import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/**
 * Physical values at the set over the time since the switch closed, from a CSV file (RFC 4180,
 * header first). Linear between rows; the last row is held.
 *
 * <p>A table that {@code export} wrote is read as well: its columns about single conversions are
 * left out, as are its rows before closing; an empty field is a clip that was off.
 */
public final class WaveformFile {
  /** The columns after {@code t_s}. */
  static final List<String> COLUMNS =
      List.of("supply_V", "supply_A", "rail1_V", "rail2_V", "rail3_V", "head_V", "meter_V");

  static final int SUPPLY_V = 0;
  static final int SUPPLY_A = 1;
  static final int RAIL1_V = 2;
  static final int HEAD_V = 5;
  static final int METER_V = 6;

  private static final String TIME = "t_s";

  /** Columns of an exported table that say nothing about the clips. */
  private static final List<String> OF_AN_EXPORT =
      List.of("supply_A_highest", "head_V_spread_rms", "meter_V_spread_rms");

  private static final int LEFT_OUT = -2;

  private final String name;
  private double[] timeS = new double[256];
  private final double[][] values = new double[COLUMNS.size()][];
  private int rows;
  private int near;
  private boolean exported;

  private WaveformFile(String name) {
    this.name = name;
  }

  /** Reads a file. */
  public static WaveformFile read(Path path) throws IOException {
    try {
      return parse(Files.readString(path), path.toString());
    } catch (NoSuchFileException missing) {
      throw new NoSuchFileException(
          path.toString(), null, "no such file; expected a waveform file (CSV)");
    } catch (MalformedInputException notText) {
      throw WaveformException.at(path.toString(), 1, new Phrase("not-text"));
    }
  }

  /** Reads text; {@code name} is for messages. */
  public static WaveformFile parse(String text, String name) throws WaveformException {
    WaveformFile file = new WaveformFile(name);
    String[] lines = text.split("\r\n|\n|\r", -1);
    int[] kinds = file.header(CsvLine.fields(lines[0]));
    for (int i = 1; i < lines.length; i++) {
      if (!lines[i].isEmpty()) {
        file.row(CsvLine.fields(lines[i]), i + 1, kinds);
      }
    }
    if (file.rows == 0) {
      throw file.bad(lines.length, file.exported ? "no-row-from-closing" : "no-rows");
    }
    file.dropEmpty();
    return file;
  }

  private int[] header(List<String> fields) throws WaveformException {
    if (fields == null) {
      throw bad(1, "header");
    }
    int[] kinds = new int[fields.size()];
    for (int i = 0; i < kinds.length; i++) {
      String field = fields.get(i);
      if ((i == 0) != field.equals(TIME)) {
        throw bad(1, "time-first", i + 1, field);
      }
      kinds[i] = COLUMNS.indexOf(field);
      if (OF_AN_EXPORT.contains(field)) {
        kinds[i] = LEFT_OUT;
        exported = true;
        continue;
      }
      if (i > 0 && kinds[i] < 0) {
        throw bad(1, "unknown-column", field, String.join(" ", COLUMNS));
      }
      if (i > 0 && values[kinds[i]] != null) {
        throw bad(1, "column-twice", field);
      }
      if (i > 0) {
        values[kinds[i]] = new double[timeS.length];
      }
    }
    return kinds;
  }

  private void row(List<String> fields, int line, int[] kinds) throws WaveformException {
    if (fields == null) {
      throw bad(line, "record", kinds.length);
    }
    if (fields.size() != kinds.length) {
      throw bad(line, "fields", fields.size(), kinds.length);
    }
    if (exported && CsvLine.number(fields.get(0)) < 0) {
      return;
    }
    grow();
    for (int i = 0; i < kinds.length; i++) {
      if (kinds[i] == LEFT_OUT) {
        continue;
      }
      String column = i == 0 ? TIME : COLUMNS.get(kinds[i]);
      boolean open = exported && i > 0 && fields.get(i).isEmpty();
      double value = open ? Double.NaN : CsvLine.number(fields.get(i));
      if (!open && !Double.isFinite(value)) {
        throw bad(line, "finite", column, fields.get(i));
      }
      if (i > 0) {
        values[kinds[i]][rows] = value;
      } else {
        time(value, fields.get(0), line);
      }
    }
    rows++;
  }

  private void time(double value, String text, int line) throws WaveformException {
    if (rows == 0 ? value != 0 : value <= timeS[rows - 1]) {
      throw bad(line, rows == 0 ? "time.zero" : "time.rising", text);
    }
    timeS[rows] = value;
  }

  /** A clip that was off all the time is not joined. */
  private void dropEmpty() {
    for (int c = 0; c < values.length; c++) {
      if (values[c] != null && Arrays.stream(values[c], 0, rows).allMatch(Double::isNaN)) {
        values[c] = null;
      }
    }
  }

  private void grow() {
    if (rows < timeS.length) {
      return;
    }
    timeS = Arrays.copyOf(timeS, 2 * rows);
    for (int c = 0; c < values.length; c++) {
      values[c] = values[c] == null ? null : Arrays.copyOf(values[c], 2 * rows);
    }
  }

  private WaveformException bad(int line, String key, Object... values) {
    return WaveformException.at(name, line, new Phrase(key, values));
  }

  /** Whether the file has this column. */
  boolean has(int column) {
    return values[column] != null;
  }

  /** Time of the last row. */
  double lastS() {
    return timeS[rows - 1];
  }

  /** The value of a column that is there. */
  double at(int column, double seconds) {
    int row = rowBefore(seconds);
    double[] value = values[column];
    if (row + 1 == rows || seconds <= timeS[row]) {
      return value[row];
    }
    double share = (seconds - timeS[row]) / (timeS[row + 1] - timeS[row]);
    return value[row] + (value[row + 1] - value[row]) * share;
  }

  /**
   * The first time from {@code afterS} to {@code untilS} at which a column is over a level; NaN =
   * none.
   */
  double crossing(int column, double level, double afterS, double untilS) {
    if (at(column, afterS) > level) {
      return afterS;
    }
    double[] value = values[column];
    for (int row = rowBefore(afterS); row + 1 < rows && timeS[row] <= untilS; row++) {
      if (value[row + 1] <= level || value[row] > level && timeS[row] < afterS) {
        continue;
      }
      double from = value[row] - level;
      double share = from >= 0 ? 0 : from / (from - (value[row + 1] - level));
      double at = Math.max(afterS, timeS[row] + (timeS[row + 1] - timeS[row]) * share);
      return at <= untilS ? at : Double.NaN;
    }
    return Double.NaN;
  }

  /** Index of the last row that is not after; asked for rising times mostly, so near the last. */
  private int rowBefore(double seconds) {
    if (timeS[near] <= seconds) {
      for (int tries = 0; tries < 8; tries++) {
        if (near + 1 == rows || timeS[near + 1] > seconds) {
          return near;
        }
        near++;
      }
    }
    int found = Arrays.binarySearch(timeS, 0, rows, seconds);
    near = Math.max(0, found >= 0 ? found : -found - 2);
    return near;
  }
}
