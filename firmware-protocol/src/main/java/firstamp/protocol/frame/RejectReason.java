package firstamp.protocol.frame;

/** Why a received frame was dropped; the checks run in this order. */
public enum RejectReason {
  /** More bytes than a frame may have before the delimiter. */
  TOO_LONG("too-long"),
  /** A COBS code points past the end. */
  BAD_COBS("bad-cobs"),
  /** Shorter than header and checksum. */
  TOO_SHORT("too-short"),
  /** The checksum does not match. */
  BAD_CRC("bad-crc"),
  /** A whole frame of another protocol version. */
  WRONG_VERSION("wrong-version"),
  /** No such message in this version. */
  UNKNOWN_TYPE("unknown-type"),
  /** The message has another length. */
  WRONG_LENGTH("wrong-length"),
  /** A field holds what the wire format does not list. */
  BAD_VALUE("bad-value");

  private final String word;

  RejectReason(String word) {
    this.word = word;
  }

  /** The word that wire-format.md and the vectors use. */
  public String word() {
    return word;
  }
}
