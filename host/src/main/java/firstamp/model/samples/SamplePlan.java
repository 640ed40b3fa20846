package firstamp.model.samples;

/**
 * The fixed order in which the probe converts its inputs, and the time of each conversion.
 *
 * <p>Conversions are counted from the probe's start; conversion <i>n</i> starts at 62.5 us times
 * <i>n</i>, in slot <i>n</i> modulo 32. A reading is the 160 conversions from 160 k on.
 */
public final class SamplePlan {
  /** Slots in one plan of 2 ms. */
  public static final int SLOTS = 32;

  /** Plans in one reading. */
  public static final int PLANS_PER_READING = 5;

  /** Conversions in one reading of 10 ms. */
  public static final int CONVERSIONS_PER_READING = SLOTS * PLANS_PER_READING;

  /** Length of one reading. */
  public static final long READING_MICROS = 10_000;

  /** Conversions of all channels in one second. */
  public static final int CONVERSIONS_PER_SECOND = 16_000;

  private static final Channel[] PLAN = plan();
  private static final int[] FIRST_SLOT = firstSlots();

  private SamplePlan() {}

  /** Channel of a slot, 0 to 31; any conversion index may be given, its slot is taken. */
  public static Channel channelAt(long conversionIndex) {
    return PLAN[(int) (conversionIndex & (SLOTS - 1))];
  }

  /** The channel's first slot; its slots lie {@link #step} apart. */
  public static int firstSlot(Channel channel) {
    return FIRST_SLOT[channel.ordinal()];
  }

  /** Slots from one conversion of the channel to its next. */
  public static int step(Channel channel) {
    return SLOTS / channel.conversionsPerPlan();
  }

  /** Start of a conversion, microseconds since the probe's start, rounded down. */
  public static long microsOf(long conversionIndex) {
    return conversionIndex * 125 / 2;
  }

  /** The last conversion that started at or before this time. */
  public static long indexAt(long micros) {
    return Math.floorDiv(micros * 2 + 1, 125);
  }

  private static int[] firstSlots() {
    int[] first = new int[Channel.values().length];
    for (int slot = SLOTS - 1; slot >= 0; slot--) {
      first[PLAN[slot].ordinal()] = slot;
    }
    return first;
  }

  private static Channel[] plan() {
    Channel[] fourth = {
      Channel.V, Channel.R1, Channel.R2, Channel.R3, Channel.J, Channel.R1, Channel.R2, Channel.R3
    };
    Channel[] plan = new Channel[SLOTS];
    for (int group = 0; group < fourth.length; group++) {
      plan[4 * group] = Channel.I;
      plan[4 * group + 1] = Channel.H;
      plan[4 * group + 2] = Channel.M;
      plan[4 * group + 3] = fourth[group];
    }
    return plan;
  }
}
