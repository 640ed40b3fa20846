package firstamp.protocol.values;

/**
 * The fixed plan of conversions: 32 slots of 62.5 us. Channel numbers are those of the wire: 0 I, 1
 * J, 2 V, 3 R1, 4 R2, 5 R3, 6 H, 7 M.
 */
public final class SlotPlan {
  public static final int CHANNELS = 8;
  public static final int SLOTS = 32;
  public static final int CONVERSIONS_PER_READING = 160;
  public static final int CONVERSIONS_PER_SECOND = 16_000;
  public static final int I = 0;
  public static final int J = 1;
  public static final int V = 2;
  public static final int R1 = 3;
  public static final int R2 = 4;
  public static final int R3 = 5;
  public static final int H = 6;
  public static final int M = 7;

  private static final byte[] FOURTH = {V, R1, R2, R3, J, R1, R2, R3};
  private static final byte[] CHANNEL_AT = new byte[SLOTS];
  private static final int[] PER_READING = new int[CHANNELS];

  static {
    for (int slot = 0; slot < SLOTS; slot++) {
      int channel =
          switch (slot % 4) {
            case 0 -> I;
            case 1 -> H;
            case 2 -> M;
            default -> FOURTH[slot / 4];
          };
      CHANNEL_AT[slot] = (byte) channel;
      PER_READING[channel] += CONVERSIONS_PER_READING / SLOTS;
    }
  }

  private SlotPlan() {}

  /** The channel converted in a slot, 0 to 31. */
  public static int channelAt(int slot) {
    return CHANNEL_AT[slot];
  }

  /** Start of a conversion, microseconds since the probe's start, rounded down. */
  public static long microsOf(long conversionIndex) {
    return conversionIndex * 125 / 2;
  }

  /** How many conversions of a channel one reading holds. */
  public static int conversionsPerReading(int channel) {
    return PER_READING[channel];
  }
}
