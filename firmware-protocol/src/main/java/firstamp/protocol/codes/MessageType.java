package firstamp.protocol.codes;

/** The messages of wire format version 1; below 0x40 from the probe, from 0x40 on from the host. */
public enum MessageType implements WireCode {
  HELLO(0x01, 98),
  RAW(0x02, MessageType.VARIABLE),
  READING(0x03, 84),
  LOOK_RESULT(0x04, 26),
  TRIP(0x05, 32),
  CAPTURE(0x06, 40),
  STATUS(0x07, 30),
  ACCEPTED(0x08, 3),
  REFUSED(0x09, 6),
  SWITCH_CHANGED(0x0A, 2),
  PRESS(0x0B, 2),
  CALIBRATION(0x0C, 100),
  HELLO_REQUEST(0x41, 1),
  STREAM_REQUEST(0x42, 1),
  SET_LIMITS(0x43, 48),
  LOOK_REQUEST(0x44, 18),
  SWITCH_ON(0x45, 18),
  SWITCH_OFF(0x46, 1),
  RESTORE(0x47, 20),
  HEARTBEAT(0x48, 0),
  SEND_AGAIN(0x49, 3),
  CALIBRATION_READ(0x4A, 0),
  CALIBRATION_WRITE(0x4B, 100),
  STATUS_REQUEST(0x4C, 0),
  SELF_TEST_REQUEST(0x4D, 0),
  SOUND(0x4E, 1),
  CLEAR_TRIP(0x4F, 2),
  SET_PEDAL(0x50, 1),
  READ_CLIPS(0x51, 0);

  static final int VARIABLE = -1;
  private static final int FIRST_FROM_HOST = 0x40;

  private final int code;
  private final int payloadBytes;

  MessageType(int code, int payloadBytes) {
    this.code = code;
    this.payloadBytes = payloadBytes;
  }

  @Override
  public int code() {
    return code;
  }

  /** Whether the host sends it (else the probe). */
  public boolean fromHost() {
    return code >= FIRST_FROM_HOST;
  }

  /** The exact payload length in bytes, or {@link #VARIABLE}. */
  public int payloadBytes() {
    return payloadBytes;
  }
}
