package firstamp.log.code;

/**
 * Prediction errors as tokens: small ones are a token each, larger ones a token for their size and
 * plain bits for the rest; and the context in which a token comes.
 */
final class Tokens {
  /** Errors of -16 to 15 are tokens 0 to 31; above, two tokens per octave. */
  static final int DIRECT = 32;

  /** Tokens. */
  static final int COUNT = DIRECT + 2 * 27;

  /** Where between two whole numbers the prediction lies: four distances to the nearer one. */
  static final int PHASES = 4;

  /** Sizes of the errors just before, half octaves. */
  static final int SIZES = 14;

  /** Contexts: size times 4 plus phase. */
  static final int CONTEXTS = SIZES * PHASES;

  /** The mean size of errors at the start of a chunk, 1/64 count. */
  static final int FIRST_MEAN = 48;

  /** Folded errors whose tokens are looked up: all of a prediction within the range of counts. */
  static final int TABLE = 4096;

  private static final byte[] OF_FOLDED = new byte[TABLE];
  private static final byte[] EXTRA_BITS = new byte[COUNT];

  static {
    for (int folded = 0; folded < TABLE; folded++) {
      OF_FOLDED[folded] = (byte) of(folded >>> 1 ^ -(folded & 1));
    }
    for (int token = DIRECT; token < COUNT; token++) {
      EXTRA_BITS[token] = (byte) ((token - DIRECT >> 1) + 4);
    }
  }

  private Tokens() {}

  /** Errors of both signs as numbers from 0 on: 0, -1, 1, -2 and so on. */
  static int folded(int error) {
    return error << 1 ^ error >> 31;
  }

  /** Token of an error. */
  static int of(int error) {
    int folded = folded(error);
    if (folded >= 0 && folded < DIRECT) {
      return folded;
    }
    int octave = 31 - Integer.numberOfLeadingZeros(folded);
    return DIRECT + 2 * (octave - 5) + (folded >>> octave - 1 & 1);
  }

  /** Token of a folded error below {@link #TABLE}. */
  static byte ofFolded(int folded) {
    return OF_FOLDED[folded];
  }

  /** Plain bits that follow a token. */
  static int extraBits(int token) {
    return EXTRA_BITS[token];
  }

  /** Their value. */
  static int extra(int error, int bits) {
    int folded = folded(error);
    return folded & (1 << bits) - 1;
  }

  /** The error that a token and its plain bits stand for. */
  static int error(int token, int extra) {
    int folded = token;
    if (token >= DIRECT) {
      int bits = extraBits(token);
      folded = (2 | token - DIRECT & 1) << bits | extra;
    }
    return folded >>> 1 ^ -(folded & 1);
  }

  /** The running mean of the size of errors, 1/64 count, after one more. */
  static int mean(int mean, int error) {
    int size = (int) Math.min(Math.abs((long) error), 1 << 20);
    return mean + ((size << 6) - mean >> 4);
  }

  /** Context of the next token. */
  static int context(int mean, int phase) {
    int size = 0;
    if (mean >= 16) {
      int octave = 31 - Integer.numberOfLeadingZeros(mean);
      size = Math.min(SIZES - 1, 2 * (octave - 4) + (mean >> octave - 1 & 1) + 1);
    }
    // Where errors are of several counts, the place between whole numbers says nothing.
    return size * PHASES + (size > 6 ? 0 : phase);
  }
}
