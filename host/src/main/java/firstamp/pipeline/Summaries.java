package firstamp.pipeline;

import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.Summary;

/** Puts the summary of a power-up together; the same for a live run and for its replay. */
public final class Summaries {
  private Summaries() {}

  /**
   * The summary at the end of the stream.
   *
   * @param powerUp number in the log, null = not logged
   * @param uuid of the power-up
   * @param chain that has seen the whole stream
   * @param conversions counted
   * @param log where it is kept
   * @param replay whether this is a replay
   */
  public static Summary of(
      Integer powerUp,
      String uuid,
      Chain chain,
      Summary.ConversionCount conversions,
      Summary.LogPlace log,
      boolean replay) {
    TripFigures trip = chain.tripFigures();
    boolean observed = chain.closedMicros() != null && chain.offBy() == null;
    return new Summary(
        powerUp,
        uuid,
        outcome(chain),
        chain.ended(),
        trip == null ? null : trip.cause(),
        trip == null ? null : trip.atMs(),
        onMs(chain, observed),
        chain.figures().look(),
        chain.figures().supply(),
        chain.figures().rails(),
        chain.figures().levels(),
        chain.rules().watched(),
        chain.rules().notWatched(),
        chain.alarms(),
        conversions,
        log,
        replay ? Boolean.TRUE : null);
  }

  private static Double onMs(Chain chain, boolean observed) {
    if (chain.closedMicros() == null) {
      return 0.0;
    }
    Long opened = chain.openedMicros();
    if (opened == null && observed && chain.latest() != null) {
      opened = chain.latest().endMicros();
    }
    return opened == null ? null : (opened - chain.closedMicros()) / 1000.0;
  }

  /** The first that applies of: tripped, no-draw, alarm, interrupted, normal. */
  private static String outcome(Chain chain) {
    if (chain.trip() != null) {
      return "tripped";
    }
    boolean standing = false;
    for (Alarm alarm : chain.alarms()) {
      if (alarm.rule().equals("no-draw")) {
        return "no-draw";
      }
      standing |= alarm.state() != AlarmState.CLEARED;
    }
    // An alarm that is over but that nobody has seen still counts: nobody has looked at it.
    // A step of a bring-up that stopped raises none, and is a finding all the same.
    if (standing || "rule-off".equals(chain.ended())) {
      return "alarm";
    }
    return chain.ended() == null || chain.ended().equals("signal") ? "interrupted" : "normal";
  }
}
