package firstamp.analysis.figures;

import firstamp.model.Trip;
import firstamp.model.TripCause;
import firstamp.model.samples.Capture;
import firstamp.model.samples.Channel;
import firstamp.model.samples.Scaling;

/**
 * Highest supply current of a trip: the one figure that verdict, headline, picture and report give.
 *
 * @param amps ampere
 * @param atLeast the input was off scale, or the current too short for the samples
 * @param limitedMs how long the limiter of the probe had held it; null = it did not, or nobody said
 */
public record TripPeak(double amps, boolean atLeast, Double limitedMs) {
  private static final int OFF_SCALE_COUNTS = 1023;

  /**
   * From what the probe recorded around the trip.
   *
   * @param trip the probe's account
   * @param capture around it; null or one of another trip = not there
   * @param scaling of the power-up
   * @param hardShortA level of the comparator: a hard short has reached it, whatever was sampled
   * @return null if no current is known
   */
  public static TripPeak of(Trip trip, Capture capture, Scaling scaling, double hardShortA) {
    TripPeak sampled = sampled(trip, capture, scaling);
    boolean unheld = trip.cause() == TripCause.HARD_SHORT && trip.limitedMs() == null;
    if (unheld && (sampled == null || sampled.amps < hardShortA)) {
      return new TripPeak(hardShortA, true, trip.limitedMs());
    }
    return sampled;
  }

  private static TripPeak sampled(Trip trip, Capture capture, Scaling scaling) {
    if (capture != null && capture.tripNumber() == trip.number()) {
      int highest = 0;
      for (int place = capture.missing(); place < Capture.LENGTH; place++) {
        highest = Math.max(highest, capture.counts(place));
      }
      return new TripPeak(
          scaling.value(Channel.I, highest), highest >= OFF_SCALE_COUNTS, trip.limitedMs());
    }
    return switch (trip.cause()) {
      case INRUSH, RUNNING, PEAK ->
          new TripPeak(
              scaling.value(Channel.of(trip.channelNumber()), trip.value()),
              trip.value() >= OFF_SCALE_COUNTS,
              trip.limitedMs());
      case HARD_SHORT ->
          trip.limitedMs() == null
              ? null
              : new TripPeak(
                  scaling.value(Channel.I, trip.value()),
                  trip.value() >= OFF_SCALE_COUNTS,
                  trip.limitedMs());
      default -> null;
    };
  }
}
