package firstamp.log.code;

/** How large the errors of a run were: the context of the next run. */
final class ResidualContext {
  /** Errors in a run. */
  static final int RUN = 16;

  /** Contexts. */
  static final int COUNT = 16;

  /** A state is at least this, and below 65536 times this. */
  static final int LOWEST = 1 << 15;

  private static final int MOST = 1 << 20;

  private ResidualContext() {}

  /** What one error adds to the size of its run. */
  static int size(int error) {
    int size = Math.abs(error);
    return size < 0 || size > MOST ? MOST : size;
  }

  /** Half octaves of the summed sizes of a run. */
  static int of(int sum) {
    if (sum < 4) {
      return 0;
    }
    int octave = 31 - Integer.numberOfLeadingZeros(sum);
    return Math.min(COUNT - 1, 2 * (octave - 2) + (sum >> octave - 1 & 1) + 1);
  }
}
