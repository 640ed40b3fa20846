package firstamp.log.code;

/** Bytes of a chunk that cannot be what they claim to be. */
public final class MalformedChunkException extends Exception {
  private static final long serialVersionUID = 1L;

  public MalformedChunkException(String message) {
    super(message);
  }

  public MalformedChunkException(String message, Throwable cause) {
    super(message, cause);
  }
}
