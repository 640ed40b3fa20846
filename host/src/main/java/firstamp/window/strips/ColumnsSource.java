package firstamp.window.strips;

import firstamp.bench.Snapshot;
import firstamp.study.EarlierPowerUp;
import firstamp.trend.Course;
import firstamp.trend.TimeCourse;
import firstamp.window.widgets.Columns;
import firstamp.window.widgets.LaneScale;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * The columns of all quantities for one picture.
 *
 * <p>The grid stays put while the picture moves over it, so a complete column never changes: it is
 * taken over from the picture before. One thread.
 */
final class ColumnsSource {
  private final Map<Course.Quantity, Columns> before = new EnumMap<>(Course.Quantity.class);
  private TimeCourse course;
  private long version;
  private double nowMs;
  private double completeMs;
  private double columnMs;
  private double firstMs;
  private int size;
  private EarlierPowerUp earlier;
  private double shiftMs;
  private double toMs;

  /**
   * Sets out for a picture.
   *
   * @param now what there is to see
   * @param time the stretch shown
   * @param pixels most columns that make sense
   */
  void begin(Snapshot now, TimeView time, int pixels) {
    double wide =
        Math.ceil(time.widthMs() / Math.max(50, pixels) / Course.SLOT_MS) * Course.SLOT_MS;
    if (now.course() != course || now.course().version() != version || wide != columnMs) {
      before.clear();
    }
    // What was complete when the last picture was made holds; the column after it has grown since.
    completeMs = before.isEmpty() ? Double.NEGATIVE_INFINITY : nowMs;
    course = now.course();
    version = course.version();
    columnMs = wide;
    nowMs = now.times().nowMs();
    toMs = time.toMs();
    firstMs = Math.floor(time.fromMs() / columnMs) * columnMs;
    double endMs = Math.min(time.toMs() + columnMs, nowMs);
    size = (int) Math.max(1, Math.ceil((endMs - firstMs) / columnMs));
    earlier = now.times().closedMs() == null ? null : now.beside().earlier();
    shiftMs = earlier == null ? 0 : earlier.closedMs() - now.times().closedMs();
  }

  double firstMs() {
    return firstMs;
  }

  double columnMs() {
    return columnMs;
  }

  /** The columns of a quantity. */
  Columns of(Course.Quantity quantity) {
    float[] low = new float[size];
    float[] high = new float[size];
    float[] mean = new float[size];
    Columns old = before.get(quantity);
    int kept = 0;
    if (old != null) {
      int offset = (int) Math.round((firstMs - old.firstMs()) / columnMs);
      int complete = (int) Math.floor((completeMs - firstMs) / columnMs);
      kept = Math.min(Math.min(complete, size), old.size() - offset);
      // After a while without a picture (another page in front) nothing of the old one is left.
      if (offset < 0 || kept <= 0) {
        kept = 0;
      } else {
        System.arraycopy(old.low(), offset, low, 0, kept);
        System.arraycopy(old.high(), offset, high, 0, kept);
        System.arraycopy(old.mean(), offset, mean, 0, kept);
      }
    }
    int fresh = size - kept;
    if (fresh > 0) {
      float[][] rest = new float[3][fresh];
      double from = firstMs + kept * columnMs;
      course.columns(quantity, from, from + fresh * columnMs, fresh, rest[0], rest[1], rest[2]);
      System.arraycopy(rest[0], 0, low, kept, fresh);
      System.arraycopy(rest[1], 0, high, kept, fresh);
      System.arraycopy(rest[2], 0, mean, kept, fresh);
    }
    Columns columns = new Columns(firstMs, columnMs, low, high, mean);
    before.put(quantity, columns);
    return columns;
  }

  /** Places of an earlier power-up's means on the same grid, aligned at switch-on; may be none. */
  List<float[]> behind(LaneScale scale, Course.Quantity... quantities) {
    List<float[]> behind = new ArrayList<>();
    if (earlier == null) {
      return behind;
    }
    int n = (int) Math.max(1, Math.ceil((toMs - firstMs) / columnMs));
    float[] unused = new float[n];
    for (Course.Quantity quantity : quantities) {
      float[] mean = new float[n];
      double from = firstMs + shiftMs;
      earlier
          .course()
          .columns(quantity, from, from + n * columnMs, n, unused, unused.clone(), mean);
      for (int k = 0; k < n; k++) {
        mean[k] = (float) scale.place(mean[k]);
      }
      behind.add(mean);
    }
    return behind;
  }
}
