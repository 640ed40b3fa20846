package firstamp.protocol;

/**
 * A field that the wire format does not allow: a caller's mistake when a message is built, an
 * ordinary rejection when one is decoded. It carries the field's number so that the probe's end can
 * answer with it.
 */
final class FieldException extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  private final int field;
  private final RefusalReason reason;

  FieldException(int field, RefusalReason reason, String message) {
    super(message);
    this.field = field;
    this.reason = reason;
  }

  int field() {
    return field;
  }

  RefusalReason reason() {
    return reason;
  }
}
