package firstamp.protocol;

/** A value that stands on the wire as a number. */
public interface WireCode {
  /** The number on the wire. */
  int code();
}
