package firstamp.window.present;

import com.fasterxml.jackson.databind.JsonNode;
import firstamp.app.DeskSettings;
import firstamp.log.PowerUpEntry;
import java.util.List;

/**
 * When the window offers to let the probe box prove that it cuts, or to calibrate it: after
 * building, after a trip above 3 A, monthly. Pure; time comes as an argument.
 */
public final class Reminders {
  /** A trip above this wears the switch: it is worth a look whether it still cuts. */
  static final double STRONG_A = 3;

  /** A month. */
  static final long MONTH_MS = 30L * 24 * 3600 * 1000;

  /** "Later" puts it off this long. */
  public static final long LATER_MS = 24L * 3600 * 1000;

  private Reminders() {}

  /** What is offered. */
  public enum What {
    /** Nothing. */
    NOTHING,
    /** It switched itself off at many ampere since it last proved that it cuts. */
    AFTER_TRIP,
    /** It has never proved that it cuts. */
    BUILT,
    /** A month has gone by. */
    MONTH,
    /** It was never calibrated: every figure is good to 5 % only. */
    CALIBRATE
  }

  /**
   * An offer.
   *
   * @param what is offered
   * @param amps of the trip, null = it was none
   * @param epochMs of the trip or of the last trial, null = none
   */
  public record Offer(What what, Double amps, Long epochMs) {
    static final Offer NONE = new Offer(What.NOTHING, null, null);
  }

  /**
   * What to offer now.
   *
   * @param settings what the window remembers
   * @param powerUps of real sets, any order
   * @param nowEpochMs the computer's clock
   */
  public static Offer due(DeskSettings settings, List<PowerUpEntry> powerUps, long nowEpochMs) {
    Long tried = settings.cutTriedEpochMs();
    PowerUpEntry strong = lastStrong(powerUps);
    if (strong != null && (tried == null || strong.startedEpochMs() > tried)) {
      return later(settings, nowEpochMs, strong.startedEpochMs())
          ? Offer.NONE
          : new Offer(What.AFTER_TRIP, tripAmps(strong), strong.startedEpochMs());
    }
    if (settings.remindFromEpochMs() != null && nowEpochMs < settings.remindFromEpochMs()) {
      return Offer.NONE;
    }
    if (tried == null) {
      return new Offer(What.BUILT, null, null);
    }
    if (nowEpochMs - tried >= MONTH_MS) {
      return new Offer(What.MONTH, null, tried);
    }
    return settings.calibratedEpochMs() == null
        ? new Offer(What.CALIBRATE, null, null)
        : Offer.NONE;
  }

  /** "Later" said before a trip does not hold for that trip. */
  private static boolean later(DeskSettings settings, long nowEpochMs, long tripEpochMs) {
    Long from = settings.remindFromEpochMs();
    return from != null && nowEpochMs < from && tripEpochMs < from - LATER_MS;
  }

  private static PowerUpEntry lastStrong(List<PowerUpEntry> powerUps) {
    PowerUpEntry last = null;
    for (PowerUpEntry entry : powerUps) {
      Double amps = tripAmps(entry);
      if (amps != null
          && amps > STRONG_A
          && (last == null || entry.startedEpochMs() > last.startedEpochMs())) {
        last = entry;
      }
    }
    return last;
  }

  /** Ampere at which a power-up switched itself off; null = it did not, or not by current. */
  static Double tripAmps(PowerUpEntry entry) {
    if (!"tripped".equals(entry.outcome())) {
      return null;
    }
    Double amps = null;
    for (JsonNode alarm : HomePresenter.summary(entry).path("alarms")) {
      if ("over-current".equals(alarm.path("rule").asText())
          && "A".equals(alarm.path("unit").asText())
          && alarm.path("value").isNumber()) {
        amps = Math.max(amps == null ? 0 : amps, alarm.path("value").asDouble());
      }
    }
    return amps;
  }
}
