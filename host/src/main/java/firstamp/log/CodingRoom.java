package firstamp.log;

/** Memory in which the groups of one power-up are coded, one after another. */
final class CodingRoom {
  final BankEncoder encoder = new BankEncoder();
  private final int[][] values = new int[PlanOrder.CHANNELS][0];

  /** Room for so many values of a channel; what it held before is gone. */
  int[] values(int channel, int count) {
    if (values[channel].length < count) {
      values[channel] = new int[count];
    }
    return values[channel];
  }
}
