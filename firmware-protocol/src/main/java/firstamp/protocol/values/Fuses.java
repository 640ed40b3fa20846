package firstamp.protocol.values;

/**
 * The chip's fuse bytes as it reads them itself.
 *
 * @param low 0 to 255
 * @param high 0 to 255
 * @param extended 0 to 255
 */
public record Fuses(int low, int high, int extended) {
  /** Those of a probe that was set as the guide says. */
  public static final Fuses RIGHT = new Fuses(0xFF, 0xC7, 0xFC);

  public Fuses {
    Check.range(17, "low", low, 0, Check.U8);
    Check.range(18, "high", high, 0, Check.U8);
    Check.range(19, "extended", extended, 0, Check.U8);
  }
}
