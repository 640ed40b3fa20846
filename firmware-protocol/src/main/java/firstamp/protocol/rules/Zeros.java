package firstamp.protocol.rules;

/**
 * The zeros of I, J and V that the probe took before the closing, 1/16 count.
 *
 * @param iSixteenths of I
 * @param jSixteenths of J
 * @param vSixteenths of V
 */
public record Zeros(int iSixteenths, int jSixteenths, int vSixteenths) {
  /** A zero in whole counts, rounded half up. */
  public static int counts(int sixteenths) {
    return sixteenths + 8 >> 4;
  }
}
