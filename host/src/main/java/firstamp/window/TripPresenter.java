package firstamp.window;

import firstamp.session.Snapshot;
import firstamp.window.BenchView.TripPicture;

/** The picture of a trip: the current around it, with "limit crossed" as time zero. */
final class TripPresenter {
  private static final double BEFORE_MS = 6;
  private static final double AFTER_MS = 10;

  private final Words words;
  private final Numbers numbers;

  TripPresenter(Words words, Numbers numbers) {
    this.words = words;
    this.numbers = numbers;
  }

  TripPicture trip(Snapshot now) {
    Snapshot.TripView trip = now.trip();
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
    float highest = 0;
    for (float amps : trip.captureA()) {
      highest = Math.max(highest, amps);
    }
    return trip.limitCrossedToOffMs() == null
        ? words.get("trip.picture.noTime", numbers.amps(highest))
        : words.get(
            "trip.picture", numbers.fixed(trip.limitCrossedToOffMs(), 2), numbers.amps(highest));
  }
}
