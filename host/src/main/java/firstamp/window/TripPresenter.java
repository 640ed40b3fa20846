package firstamp.window;

import firstamp.model.TripCause;
import firstamp.session.Snapshot;
import firstamp.window.BenchView.TripPicture;

/** The picture of a trip: the current around it, with "limit crossed" as time zero. */
final class TripPresenter {
  private static final double SAME_LIMIT = 0.05;
  private static final double BEFORE_MS = 6;
  private static final double AFTER_MS = 10;

  private final Words words;
  private final Numbers numbers;

  TripPresenter(Words words, Numbers numbers) {
    this.words = words;
    this.numbers = numbers;
  }

  /**
   * The trip with the limit as the job sheet says it: the probe's own is the nearest it can hold, a
   * percent or so beside, and two numbers for one limit would puzzle.
   */
  static Snapshot.TripView asOnSheet(Snapshot now) {
    Snapshot.TripView t = now.trip();
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
            t.highest())
        : t;
  }

  TripPicture trip(Snapshot now) {
    Snapshot.TripView trip = asOnSheet(now);
    if (trip == null || trip.captureA() == null || trip.captureA().isEmpty()) {
      return null;
    }
    Double off = trip.limitCrossedToOffMs();
    double end = trip.captureFirstMs() + trip.captureStepMs() * (trip.captureA().size() - 1);
    return new TripPicture(
        sentence(trip),
        Math.max(trip.captureFirstMs(), -BEFORE_MS),
        Math.min(end, AFTER_MS + (off == null ? 0 : off)),
        trip.captureStepMs(),
        trip.captureFirstMs(),
        trip.captureA(),
        "A".equals(trip.unit()) ? trip.limit() : null,
        off);
  }

  private String sentence(Snapshot.TripView trip) {
    String highest = highest(trip, words, numbers);
    boolean crossed = trip.limitCrossedToOffMs() != null && trip.limitCrossedToOffMs() > 0;
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
