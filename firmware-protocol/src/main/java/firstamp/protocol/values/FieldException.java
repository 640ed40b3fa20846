package firstamp.protocol.values;

import firstamp.protocol.codes.RefusalReason;

/**
 * A field that the wire format does not allow: a caller's mistake when a message is built, an
 * ordinary rejection when one is decoded. It carries the field's number so that the probe's end can
 * answer with it.
 */
public final class FieldException extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  private final int field;
  private final RefusalReason reason;

  public FieldException(int field, RefusalReason reason, String message) {
    super(message);
    this.field = field;
    this.reason = reason;
  }

  public int field() {
    return field;
  }

  public RefusalReason reason() {
    return reason;
  }
}
