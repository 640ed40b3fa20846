package firstamp.protocol.codes;

/** Why the probe opened the switch by itself. */
public enum TripCause implements WireCode {
  /** Over the inrush limit within the inrush time. */
  INRUSH(1),
  /** Over the running limit, on I or J. */
  RUNNING(2),
  /** The inrush I2t budget is used up. */
  I2T(3),
  /** The comparator, about 10 us. */
  HARD_SHORT(4),
  /** A rail out of its window, or the supply over its limit. */
  OVER_VOLTAGE(5),
  /** No valid frame from the host in time. */
  HOST_SILENCE(6),
  /** The chassis clip came off. */
  CHASSIS_CLIP(7),
  /** A self-test failed while on. */
  SELF_TEST(8),
  /** The mean of 100 ms over the running limit (pulsed current); shown as running. */
  MEAN(9),
  /** A peak of pulsed current over its limit; shown as running. */
  PEAK(10),
  /** A start over its own limit; shown as running. */
  START(11);

  private final int code;

  TripCause(int code) {
    this.code = code;
  }

  @Override
  public int code() {
    return code;
  }
}
