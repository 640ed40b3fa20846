package firstamp.protocol.codes;

/** Why the probe refused a command; each reason describes its detail. */
public enum RefusalReason implements WireCode {
  /** Not in this state; detail: the state. */
  WRONG_STATE(1),
  /** A field is out of its range; detail: field number. */
  BAD_VALUE(2),
  /** A limit nearer than 4 counts to zero; detail: field number. */
  LIMIT_TOO_FINE(3),
  /** A limit would get wider while on; detail: field number. */
  LIMIT_GETS_WIDER(4),
  /** Limits were never set since the start. */
  NO_LIMITS(5),
  /** The chassis clip is off; detail: inputs. */
  NO_CHASSIS_CLIP(6),
  /** Button or pedal is down; detail: inputs. */
  BUTTON_DOWN(7),
  /** A self-test failed; detail: self-test bits. */
  SELF_TEST(8),
  /** The calibration's checksum is wrong. */
  CALIBRATION_DAMAGED(9),
  /** A trip is latched; detail: its number. */
  TRIP_LATCHED(10),
  /** Not the latched trip; detail: the latched number. */
  WRONG_NUMBER(11),
  /** The raw stream needs 500 000 baud; detail: speed code. */
  TOO_FAST_FOR_LINE(12),
  /** Nothing to send again; detail: the number asked for. */
  NOTHING_THERE(13),
  /** Still at something else; detail: the state. */
  BUSY(14),
  /** The probe's memory did not take the write. */
  EEPROM(15),
  /** Hold to run, and the foot is up; detail: inputs. */
  FOOT_NOT_DOWN(16);

  private final int code;

  RefusalReason(int code) {
    this.code = code;
  }

  @Override
  public int code() {
    return code;
  }
}
