package firstamp.window.present;

import firstamp.bench.Snapshot;
import firstamp.model.TripCause;
import firstamp.window.present.BenchView.TripPicture;
import firstamp.window.present.BenchView.TripZero;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;

/** The picture of a trip: the current around it; time zero is where a limit was crossed. */
public final class TripPresenter {
  private static final double SAME_LIMIT = 0.05;
  private static final double BEFORE_MS = 6;
  private static final double AFTER_MS = 10;

  private final Words words;
  private final Numbers numbers;

  public TripPresenter(Words words, Numbers numbers) {
    this.words = words;
    this.numbers = numbers;
  }

  /**
   * The trip with the limit as the job sheet says it: the probe's own is the nearest it can hold, a
   * percent or so beside, and two numbers for one limit would puzzle.
   */
  static Snapshot.TripView asOnSheet(Snapshot now) {
    Snapshot.TripView t = now.findings().trip();
    if (t == null || t.limit() == null || !"A".equals(t.unit())) {
      return t;
    }
    Double said = t.cause() == TripCause.INRUSH ? now.limits().inrushA() : now.limits().runningA();
    boolean same = said != null && Math.abs(said - t.limit()) < SAME_LIMIT * said;
    return same
        ? new Snapshot.TripView(
            t.number(),
            t.cause(),
            t.railName(),
            t.atMs(),
            t.value(),
            t.atMost(),
            said,
            t.unit(),
            t.limitCrossedToOffMs(),
            t.captureA(),
            t.captureFirstMs(),
            t.captureStepMs(),
            t.highest(),
            t.selfTestBits())
        : t;
  }

  public TripPicture trip(Snapshot now) {
    return picture(asOnSheet(now));
  }

  /** Null where there is no capture. */
  public TripPicture picture(Snapshot.TripView trip) {
    if (trip == null || trip.captureA() == null || trip.captureA().isEmpty()) {
      return null;
    }
    TripZero zero = zero(trip);
    Double took = trip.limitCrossedToOffMs();
    double shift = zero == TripZero.OPEN && took != null ? took : 0;
    Double off = took == null ? null : (Double) (took - shift);
    double first = trip.captureFirstMs() - shift;
    double end = first + trip.captureStepMs() * (trip.captureA().size() - 1);
    return new TripPicture(
        sentence(trip, zero),
        zero,
        Math.max(first, -BEFORE_MS),
        Math.min(end, AFTER_MS + (off == null ? 0 : off)),
        trip.captureStepMs(),
        first,
        trip.captureA(),
        "A".equals(trip.unit()) ? trip.limit() : null,
        off);
  }

  private static TripZero zero(Snapshot.TripView trip) {
    return switch (trip.cause()) {
      case HOST_SILENCE, CHASSIS_CLIP, SELF_TEST -> TripZero.OPEN;
      case RUNNING, PEAK -> overBefore(trip) ? TripZero.BEGINS : TripZero.CROSSED;
      default -> TripZero.CROSSED;
    };
  }

  /** Whether the value before the first one that counted was over the limit already. */
  private static boolean overBefore(Snapshot.TripView trip) {
    int before = (int) Math.round(-trip.captureFirstMs() / trip.captureStepMs()) - 1;
    return "A".equals(trip.unit())
        && trip.limit() != null
        && before >= 0
        && before < trip.captureA().size()
        && trip.captureA().get(before) > trip.limit();
  }

  private String sentence(Snapshot.TripView trip, TripZero zero) {
    String highest = highest(trip, words, numbers);
    Double limited = trip.highest().limitedMs();
    if (limited != null) {
      String key =
          trip.cause() == TripCause.HARD_SHORT ? "trip.picture.held" : "trip.picture.limited";
      return words.get(key, numbers.fixed(limited, 2), highest);
    }
    boolean crossed =
        zero == TripZero.CROSSED
            && trip.limitCrossedToOffMs() != null
            && trip.limitCrossedToOffMs() > 0;
    if (zero == TripZero.BEGINS) {
      return words.get(
          "trip.picture.fromBegin", numbers.fixed(trip.limitCrossedToOffMs(), 2), highest);
    }
    return crossed
        ? words.get("trip.picture", numbers.fixed(trip.limitCrossedToOffMs(), 2), highest)
        : words.get("trip.picture.noTime", highest);
  }

  /** The one highest current of a trip; "at least" where it was off scale. */
  static String highest(Snapshot.TripView trip, Words words, Numbers numbers) {
    String amps = numbers.amps(trip.highest().amps()).toString();
    return trip.highest().atLeast() ? words.get("value.atLeast", amps) : amps;
  }
}
