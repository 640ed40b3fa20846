package firstamp.protocol.values;

/**
 * The probe's digital inputs at one moment.
 *
 * @param bits as on the wire, 0 to 255
 */
public record Inputs(int bits) {
  public static final int CHASSIS_CLIP_ON = 1;
  public static final int SUPPLY_PRESENT = 1 << 1;
  public static final int SUPPLY_REVERSED = 1 << 2;
  public static final int BUTTON_DOWN = 1 << 3;
  public static final int PEDAL_DOWN = 1 << 4;
  public static final int ISOLATED_LINK = 1 << 5;
  public static final int LIMITING = 1 << 6;
  public static final int LIMITER_TESTED = 1 << 7;

  public Inputs {
    Check.range(1, "inputs", bits, 0, Check.U8);
  }

  /** Whether the chassis clip is joined. */
  public boolean chassisClipOn() {
    return (bits & CHASSIS_CLIP_ON) != 0;
  }

  /** Whether a supply stands at the module's input. */
  public boolean supplyPresent() {
    return (bits & SUPPLY_PRESENT) != 0;
  }

  /** Whether that supply is the wrong way round. */
  public boolean supplyReversed() {
    return (bits & SUPPLY_REVERSED) != 0;
  }

  /** Whether the push button is held down. */
  public boolean buttonDown() {
    return (bits & BUTTON_DOWN) != 0;
  }

  /** Whether the pedal is held down. */
  public boolean pedalDown() {
    return (bits & PEDAL_DOWN) != 0;
  }

  /** Whether the cable to the host is isolated. */
  public boolean isolatedLink() {
    return (bits & ISOLATED_LINK) != 0;
  }

  /** Whether the limiter holds the current now. */
  public boolean limiting() {
    return (bits & LIMITING) != 0;
  }

  /** Whether the limiter was tested before the closing that stands or came last. */
  public boolean limiterTested() {
    return (bits & LIMITER_TESTED) != 0;
  }
}
