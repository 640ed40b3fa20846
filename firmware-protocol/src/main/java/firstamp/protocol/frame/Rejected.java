package firstamp.protocol.frame;

import firstamp.protocol.codes.RefusalReason;

/**
 * A received frame that was dropped. Type, sequence and field are what the frame said, or {@link
 * #UNKNOWN} where the reason says that they cannot be trusted.
 *
 * @param reason the first check that failed
 * @param encodedBytes bytes on the line without the delimiter
 * @param typeCode message number, known from {@link RejectReason#UNKNOWN_TYPE} on
 * @param sequence known as the type is
 * @param field number of the field, known for {@link RejectReason#BAD_VALUE}
 * @param refusal how the probe's end answers a {@link RejectReason#BAD_VALUE}: bad-value or
 *     limit-too-fine
 */
public record Rejected(
    RejectReason reason,
    int encodedBytes,
    int typeCode,
    int sequence,
    int field,
    RefusalReason refusal) {
  /** Not known for this reason. */
  public static final int UNKNOWN = -1;

  static Rejected unreadable(RejectReason reason, int encodedBytes) {
    return new Rejected(reason, encodedBytes, UNKNOWN, UNKNOWN, UNKNOWN, RefusalReason.BAD_VALUE);
  }
}
