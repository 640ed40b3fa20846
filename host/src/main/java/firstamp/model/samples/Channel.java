package firstamp.model.samples;

/**
 * One converter input of the probe; the order is that of the wire format and of the converter's
 * inputs.
 */
public enum Channel {
  /** Supply current, coarse. */
  I(Quantity.AMPERE, 8),
  /** Supply current, fine. */
  J(Quantity.AMPERE, 1),
  /** Volts on the set side of the switch. */
  V(Quantity.VOLT, 1),
  /** First rail. */
  R1(Quantity.VOLT, 2),
  /** Second rail. */
  R2(Quantity.VOLT, 2),
  /** Third rail. */
  R3(Quantity.VOLT, 2),
  /** Head: volts across the resistor in series with the record head. */
  H(Quantity.VOLT, 8),
  /** Level meter. */
  M(Quantity.VOLT, 8);

  private static final Channel[] ALL = values();

  private final Quantity quantity;
  private final int perPlan;

  Channel(Quantity quantity, int perPlan) {
    this.quantity = quantity;
    this.perPlan = perPlan;
  }

  /** What the channel measures. */
  public Quantity quantity() {
    return quantity;
  }

  /** Conversions of this channel in one plan of 32 slots (2 ms). */
  public int conversionsPerPlan() {
    return perPlan;
  }

  /** Conversions of this channel in one reading (10 ms). */
  public int conversionsPerReading() {
    return perPlan * SamplePlan.PLANS_PER_READING;
  }

  /** Conversions of this channel in one second. */
  public int conversionsPerSecond() {
    return perPlan * (SamplePlan.CONVERSIONS_PER_SECOND / SamplePlan.SLOTS);
  }

  /**
   * The channel with this number on the wire.
   *
   * @param number 0 to 7
   */
  public static Channel of(int number) {
    if (number < 0 || number >= ALL.length) {
      throw new IllegalArgumentException("channel number " + number + ", allowed 0 to 7");
    }
    return ALL[number];
  }

  /**
   * The channel of a rail.
   *
   * @param rail 1 to 3
   */
  public static Channel ofRail(int rail) {
    if (rail < 1 || rail > 3) {
      throw new IllegalArgumentException("rail " + rail + ", allowed 1 to 3");
    }
    return ALL[R1.ordinal() + rail - 1];
  }

  /** The unit of a channel's calibrated value. */
  public enum Quantity {
    /** Ampere. */
    AMPERE("A"),
    /** Volt. */
    VOLT("V");

    private final String unit;

    Quantity(String unit) {
      this.unit = unit;
    }

    /** SI symbol. */
    public String unit() {
      return unit;
    }
  }
}
