package firstamp.log;

/** Bytes of a chunk that cannot be what they claim to be. */
final class MalformedChunkException extends Exception {
  private static final long serialVersionUID = 1L;

  MalformedChunkException(String message) {
    super(message);
  }

  MalformedChunkException(String message, Throwable cause) {
    super(message, cause);
  }
}
