package firstamp.protocol.codes;

/** A value that stands on the wire as a number. */
public interface WireCode {
  /** The version of the wire format whose numbers these are. */
  int VERSION = 2;

  /** The number on the wire. */
  int code();
}
