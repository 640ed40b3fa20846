package firstamp.pipeline;

import firstamp.model.Trip;
import firstamp.model.TripCause;
import firstamp.model.samples.Channel;
import firstamp.model.samples.Scaling;

/**
 * A trip in physical units.
 *
 * @param cause identifier
 * @param rail 1 to 3 for over-voltage of a rail, 0 for the supply, null otherwise
 * @param atMs switch pin low, milliseconds from closing
 * @param value what the probe saw, of a hard short what the limiter held; null = it has no figure
 * @param limit what it was compared with, null = none
 * @param unit of both
 * @param limitedMs how long the limiter had held the current, null = it did not, or nobody said
 * @param selfTestBits what the self-test found, 0 = nothing, or it did not say
 */
public record TripFigures(
    String cause,
    Integer rail,
    Double atMs,
    Double value,
    Double limit,
    String unit,
    Double limitedMs,
    int selfTestBits) {

  /**
   * Computes the figures.
   *
   * @param trip the probe's account
   * @param scaling of the power-up
   * @param closedMicros when the switch closed, probe time
   * @param hardShortA comparator level
   */
  public static TripFigures of(Trip trip, Scaling scaling, Long closedMicros, double hardShortA) {
    Double atMs = closedMicros == null ? null : (trip.openedMicros() - closedMicros) / 1000.0;
    TripCause cause = trip.cause();
    Double value = null;
    Double limit = null;
    String unit = null;
    Integer rail = null;
    switch (cause) {
      case INRUSH, RUNNING, PEAK, MEAN, START -> {
        Channel channel = Channel.of(trip.channelNumber());
        double divisor = cause == TripCause.MEAN ? 16.0 : 1.0;
        value = scaling.value(channel, trip.value() / divisor);
        limit = scaling.value(channel, trip.limit() / divisor);
        unit = "A";
      }
      case I2T -> {
        double perCount = scaling.calibration().scale(Channel.I).perCount();
        double perUnit = perCount * perCount / Channel.I.conversionsPerSecond();
        value = trip.i2tSum() * perUnit;
        limit = trip.i2tLimit() * perUnit;
        unit = "A2s";
      }
      case HARD_SHORT -> {
        value = trip.limitedMs() == null ? hardShortA : scaling.value(Channel.I, trip.value());
        // The limiter holds less with many volts across it: then no level says what it was.
        limit = value < hardShortA ? null : (Double) hardShortA;
        unit = "A";
      }
      case OVER_VOLTAGE -> {
        Channel channel = Channel.of(trip.channelNumber());
        rail = channel == Channel.V ? 0 : channel.ordinal() - Channel.R1.ordinal() + 1;
        value = scaling.value(channel, trip.value());
        limit = scaling.value(channel, trip.limit());
        unit = "V";
      }
      case HOST_SILENCE -> {
        value = (trip.openedMicros() - trip.crossedMicros()) / 1000.0;
        unit = "ms";
      }
      default -> {
        // The clip has no figure; the self-test has its bits.
      }
    }
    return new TripFigures(
        cause.id(), rail, atMs, value, limit, unit, trip.limitedMs(), trip.selfTestBits());
  }
}
