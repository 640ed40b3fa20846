package firstamp.analysis.figures;

import firstamp.model.samples.Reading;
import firstamp.model.samples.SamplePlan;

/**
 * When the switch closed and opened, and what lies between. Times are the probe's microseconds. Not
 * thread-safe.
 */
final class OnInterval {
  static final long READING_MICROS = 10_000;
  private static final long I_INTERVAL_MICROS = 250;
  private static final long NOT_YET = Long.MIN_VALUE;

  private long closedMicros = NOT_YET;
  private long openedMicros = NOT_YET;
  private long latestMicros = NOT_YET;

  /** A closing; what was before is over. */
  void closed(long micros) {
    closedMicros = micros;
    openedMicros = NOT_YET;
  }

  /** An opening; the first of several reports after a closing counts. */
  void opened(long micros) {
    if (isClosed() && openedMicros == NOT_YET && micros >= closedMicros) {
      openedMicros = micros;
    }
  }

  /** The end of the newest reading. */
  void latest(long micros) {
    latestMicros = micros;
  }

  /** Whether it ever closed. */
  boolean isClosed() {
    return closedMicros != NOT_YET;
  }

  long closedMicros() {
    return closedMicros;
  }

  /** What began after the opening would only push out what is still held from before it. */
  boolean isAfter(long beginMicros) {
    return openedMicros != NOT_YET && beginMicros >= openedMicros;
  }

  /** Of the time on; while it is on that of the newest reading. */
  long endMicros() {
    return openedMicros != NOT_YET ? openedMicros : Math.max(closedMicros, latestMicros);
  }

  /** Windows may come before or after the readings of their time: only the opening bounds them. */
  long openingMicros() {
    return openedMicros != NOT_YET ? openedMicros : Long.MAX_VALUE;
  }

  /** Whether it opened before the current could be looked at twice: no figure of it can be told. */
  boolean isShorterThanAConversionOfI() {
    return openedMicros != NOT_YET && openedMicros - closedMicros < I_INTERVAL_MICROS;
  }

  /** Number of a reading since closing. */
  int number(Reading reading) {
    return (int) ((reading.startMicros() - closedMicros) / READING_MICROS);
  }

  /** Whole readings on so far. */
  int wholeReadings() {
    return (int) Math.min(Integer.MAX_VALUE, (endMicros() - closedMicros) / READING_MICROS);
  }

  /** Readings on so far, the one in which it opened with them: current after that adds nothing. */
  int begunReadings() {
    return (int) ((endMicros() - closedMicros + READING_MICROS - 1) / READING_MICROS);
  }

  /** Whether a window lies between a moment after closing and the opening. */
  boolean holds(long firstIndex, long endIndex, double fromMs) {
    return isClosed()
        && SamplePlan.microsOf(firstIndex) >= closedMicros + Math.round(fromMs * 1000)
        && SamplePlan.microsOf(endIndex) <= openingMicros();
  }

  double ms(long micros) {
    return (micros - closedMicros) / 1000.0;
  }
}
