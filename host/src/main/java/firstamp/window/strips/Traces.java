package firstamp.window.strips;

import firstamp.window.strips.StripsPicture.Trace;
import firstamp.window.widgets.Columns;
import firstamp.window.widgets.LaneScale;
import java.util.Arrays;

/** Columns of values as a trace on a scale, and where they lie outside of a window. */
final class Traces {
  private Traces() {}

  static void markOutside(
      Columns columns,
      LaneScale scale,
      float[] edge,
      double low,
      double high,
      double fromMs,
      double toMs) {
    for (int column = 0; column < columns.size(); column++) {
      double end = columns.firstMs() + (column + 1) * columns.columnMs();
      if (end <= fromMs || end > toMs + columns.columnMs()) {
        continue;
      }
      if (columns.high()[column] > high) {
        edge[column] = (float) scale.place(high);
      } else if (columns.low()[column] < low) {
        edge[column] = (float) scale.place(low);
      }
    }
  }

  static float[] nothing(int size) {
    float[] none = new float[size];
    Arrays.fill(none, Float.NaN);
    return none;
  }

  static Trace trace(String name, Columns columns, LaneScale scale, float[] edge) {
    int size = columns.size();
    float[] low = new float[size];
    float[] high = new float[size];
    float[] mean = new float[size];
    for (int column = 0; column < size; column++) {
      // A negative rail turns its scale over: lowest may stand above highest.
      float one = (float) scale.place(columns.low()[column]);
      float other = (float) scale.place(columns.high()[column]);
      low[column] = Math.min(one, other);
      high[column] = Math.max(one, other);
      mean[column] = (float) scale.place(columns.mean()[column]);
    }
    return new Trace(name, low, high, mean, edge);
  }
}
