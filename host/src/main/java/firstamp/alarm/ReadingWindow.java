package firstamp.alarm;

import firstamp.alarm.trail.History;
import firstamp.model.samples.Channel;
import firstamp.model.samples.Reading;
import firstamp.model.samples.Scaling;

/**
 * The reading that is being judged, in ampere and volt, with the last second behind it. One object
 * per engine, refilled with each reading.
 */
final class ReadingWindow {
  /** Readings kept: one second. */
  static final int KEPT = 100;

  private static final int RAILS = 3;
  private static final int OPEN_CLIP_COUNTS = 1023;

  private final boolean pulsed;
  private final History ampere = new History(KEPT);
  private final History volts = new History(KEPT);
  private final History[] rails = {new History(KEPT), new History(KEPT), new History(KEPT)};
  private final boolean[] open = new boolean[RAILS];
  private Reading reading;
  private int held;

  /**
   * Nothing taken yet.
   *
   * @param pulsed whether the current comes in pulses and is judged on means of 100 ms
   */
  ReadingWindow(boolean pulsed) {
    this.pulsed = pulsed;
  }

  void take(Reading taken, Scaling scaling) {
    reading = taken;
    ampere.put(scaling.supplyA(taken));
    volts.put(scaling.supplyV(taken));
    for (int k = 0; k < RAILS; k++) {
      open[k] = taken.lowest(Channel.ofRail(k + 1)) >= OPEN_CLIP_COUNTS;
      // NaN stays within this class's callers: every comparison with it is false, so nothing is
      // bad.
      rails[k].put(open[k] ? Double.NaN : scaling.railV(taken, k + 1));
    }
    held = Math.min(KEPT, held + 1);
  }

  /** Forgets what is behind: the switch closed or opened, or readings are missing. */
  void forget() {
    held = 0;
  }

  Reading reading() {
    return reading;
  }

  long fromMicros() {
    return reading.startMicros();
  }

  long toMicros() {
    return reading.endMicros();
  }

  /** Whether the supply current can be judged (pulsed current: from 100 ms on). */
  boolean currentKnown() {
    return !pulsed || held >= 10;
  }

  /** Supply current: of the reading, or of the last 100 ms where it comes in pulses. */
  double supplyA() {
    return pulsed ? mean(ampere, Math.min(held, 10)) : ampere.ago(0);
  }

  double supplyV() {
    return volts.ago(0);
  }

  /** Volts of a rail, 1 to 3; NaN while nothing is clipped to it. */
  double railV(int rail) {
    return rails[rail - 1].ago(0);
  }

  /** Whether nothing is clipped to the input: all its conversions are at full scale. */
  boolean railOpen(int rail) {
    return open[rail - 1];
  }

  /** How many readings without a hole are behind, this one included. */
  int held() {
    return held;
  }

  /** Supply current this many readings ago, 0 = now. */
  double supplyAAgo(int readings) {
    return ampere.ago(readings);
  }

  double railVAgo(int rail, int readings) {
    return rails[rail - 1].ago(readings);
  }

  /** Volts of the supply, for callers that read many of them. */
  History supplyTrail() {
    return volts;
  }

  /** Volts of a rail likewise. */
  History railTrail(int rail) {
    return rails[rail - 1];
  }

  private static double mean(History values, int count) {
    double sum = 0;
    for (int k = 0; k < count; k++) {
      sum += values.ago(k);
    }
    return sum / count;
  }
}
