package firstamp.window.strips;

import firstamp.bench.Snapshot;
import firstamp.trend.TimeCourse;

/** How often a picture of the strips is made. Mutable, one thread. */
final class PictureRate {
  /** From this width of a column on, four pictures a second are made. */
  private static final double WIDE_COLUMN_MS = 600;

  private static final double WIDE_PICTURE_MS = 230;

  private double builtMs = Double.NaN;
  private double builtWidthMs;
  private int builtPixels;
  private TimeCourse builtCourse;
  private Snapshot.Phase builtPhase;
  private boolean builtFollows;

  /** Where hours are in view a column stands for seconds: four pictures a second are enough. */
  boolean due(Snapshot snapshot, TimeView time, int pixels) {
    boolean same =
        builtWidthMs == time.widthMs()
            && builtPixels == pixels
            && snapshot.course() == builtCourse
            && snapshot.phase() == builtPhase
            && time.follows() == builtFollows
            && snapshot.kind() != Snapshot.Kind.REPLAY;
    if (same && time.widthMs() / pixels > WIDE_COLUMN_MS) {
      double since = snapshot.times().nowMs() - builtMs;
      if (since >= 0 && since < WIDE_PICTURE_MS) {
        return false;
      }
    }
    builtMs = snapshot.times().nowMs();
    builtWidthMs = time.widthMs();
    builtPixels = pixels;
    builtCourse = snapshot.course();
    builtPhase = snapshot.phase();
    builtFollows = time.follows();
    return true;
  }
}
