package firstamp.protocol.values;

/**
 * Which clips are joined to something, as the probe has read them back.
 *
 * @param bits as on the wire, 0 to 255
 */
public record Clips(int bits) {
  /** Nothing was read back yet. */
  public static final Clips UNKNOWN = new Clips(0);

  /** All are joined. */
  public static final Clips ALL_JOINED = new Clips(0x9F);

  /** The head's pair. */
  public static final int HEAD = 1 << 3;

  /** The meter's clip. */
  public static final int METER = 1 << 4;

  private static final int READ_BACK = 1 << 7;

  public Clips {
    Check.range(1, "clips", bits, 0, Check.U8);
  }

  /** Whether they were read back at all. */
  public boolean known() {
    return (bits & READ_BACK) != 0;
  }

  /** Whether a rail's clip, 1 to 3, is joined; true while nothing is known. */
  public boolean railJoined(int rail) {
    return !known() || (bits >> rail - 1 & 1) != 0;
  }

  /** Whether the head's clips are joined; true while nothing is known. */
  public boolean headJoined() {
    return !known() || (bits & HEAD) != 0;
  }

  /** Whether the meter's clip is joined; true while nothing is known. */
  public boolean meterJoined() {
    return !known() || (bits & METER) != 0;
  }
}
