package firstamp.protocol.rules;

import firstamp.protocol.codes.TripCause;

/** Counts conversions in a row that are over a limit and remembers when the row began. */
final class RowCounter {
  private int inRow;
  private long firstTickMicros;

  /** Whether this conversion makes the row long enough. */
  boolean over(boolean over, int needed, long tickMicros) {
    if (!over) {
      inRow = 0;
      return false;
    }
    if (inRow == 0) {
      firstTickMicros = tickMicros;
    }
    inRow++;
    return inRow >= needed;
  }

  /** Restarts. */
  void clear() {
    inRow = 0;
  }

  /** The decision that a row of this length makes. */
  TripDecision decides(TripCause cause, int channel, int counts, int limitCounts) {
    return new TripDecision(cause, channel, inRow, firstTickMicros, counts, limitCounts);
  }
}
