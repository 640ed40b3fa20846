package firstamp.emulate.probe;

import firstamp.model.samples.Channel;

/** "Off" is believed only when nothing flows: looked at for a second after each opening. */
final class OpenWatch {
  private static final long SETTLE_CONVERSIONS = 50 * 32;
  private static final long WATCH_CONVERSIONS = 550 * 32;
  private static final int IN_ROW = 100;

  private final int overJ;
  private boolean watching;
  private long openedAt;
  private int inRow;

  OpenWatch(int overJ) {
    this.overJ = overJ;
  }

  void opened(long n) {
    watching = true;
    openedAt = n;
    inRow = 0;
  }

  void closed() {
    watching = false;
  }

  /** True once, when current has flowed for 200 ms though the switch is open. */
  boolean conversion(long n, Channel channel, int counts) {
    long since = n - openedAt;
    watching &= since <= WATCH_CONVERSIONS;
    if (!watching || channel != Channel.J || since < SETTLE_CONVERSIONS) {
      return false;
    }
    inRow = counts > overJ ? inRow + 1 : 0;
    if (inRow < IN_ROW) {
      return false;
    }
    watching = false;
    return true;
  }
}
