package firstamp.log.code;

/** Memory in which the groups of one power-up are coded, one after another. */
public final class EncoderWorkspace {
  public final BankEncoder encoder = new BankEncoder();
  private final int[][] values = new int[Deinterleaver.CHANNELS][0];

  /** Room for this many values of a channel; earlier content is lost. */
  public int[] values(int channel, int count) {
    if (values[channel].length < count) {
      values[channel] = new int[count];
    }
    return values[channel];
  }
}
