package firstamp.emulate.probe;

import firstamp.model.samples.Channel;
import firstamp.protocol.values.Clips;
import java.util.function.Predicate;

/** Reads back which clips are joined to something, while the switch is open. */
final class ClipReader {
  /** How long it takes, in plans of 2 ms. */
  static final int PLANS = 7;

  private static final int OPEN_COUNTS = 1018;

  private final Predicate<Channel> levelJoined;
  private final int[] lastRail = new int[3];
  private Clips read = Clips.UNKNOWN;
  private boolean asked;

  /**
   * Nothing read yet.
   *
   * @param levelJoined whether the clip of head or meter stays where it is when it is read back
   */
  ClipReader(Predicate<Channel> levelJoined) {
    this.levelJoined = levelJoined;
  }

  /** As they were read last. */
  Clips read() {
    return read;
  }

  /** A conversion of a rail. */
  void rail(Channel rail, int counts) {
    lastRail[rail.ordinal() - Channel.R1.ordinal()] = counts;
  }

  void ask() {
    asked = true;
  }

  void forget() {
    asked = false;
  }

  /**
   * Whether they have been read since they were asked for; once.
   *
   * @param plans since then
   */
  boolean done(int plans) {
    if (!asked || plans < PLANS) {
      return false;
    }
    asked = false;
    take();
    return true;
  }

  /** Takes what they show now. */
  void take() {
    int bits = Clips.ALL_JOINED.bits();
    for (int rail = 0; rail < lastRail.length; rail++) {
      bits &= lastRail[rail] >= OPEN_COUNTS ? ~(1 << rail) : ~0;
    }
    bits &= levelJoined.test(Channel.H) ? ~0 : ~Clips.HEAD;
    bits &= levelJoined.test(Channel.M) ? ~0 : ~Clips.METER;
    read = new Clips(bits);
  }
}
