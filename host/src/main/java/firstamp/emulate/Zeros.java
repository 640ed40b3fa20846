package firstamp.emulate;

/**
 * The zeros of I, J and V, 1/16 count.
 *
 * @param iSixteenths of I
 * @param jSixteenths of J
 * @param vSixteenths of V
 */
record Zeros(int iSixteenths, int jSixteenths, int vSixteenths) {
  static int counts(int sixteenths) {
    return sixteenths + 8 >> 4;
  }
}
