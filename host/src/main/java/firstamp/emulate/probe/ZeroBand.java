package firstamp.emulate.probe;

import firstamp.model.samples.Channel;
import firstamp.protocol.codes.CalibrationState;
import firstamp.protocol.rules.Zeros;

/**
 * Where the zero of I, J or V may lie: round the calibrated one, or what the parts of a new box
 * allow.
 *
 * @param lowestCounts at least
 * @param highestCounts at most
 */
public record ZeroBand(int lowestCounts, int highestCounts) {
  private static final ZeroBand NEW_I = new ZeroBand(13, 27);
  private static final ZeroBand NEW_J = new ZeroBand(11, 31);
  private static final ZeroBand NEW_V = new ZeroBand(7, 13);
  private static final int MOVES = 3;

  public static ZeroBand of(Memory memory, Channel channel) {
    if (memory.calibrationState() != CalibrationState.VALID) {
      return channel == Channel.I ? NEW_I : channel == Channel.J ? NEW_J : NEW_V;
    }
    int rest = memory.calibration().scales().get(channel.ordinal()).countsAt(0);
    return new ZeroBand(rest > MOVES ? rest - MOVES : 0, rest + MOVES);
  }

  private boolean holds(int sixteenths) {
    return sixteenths >= 16 * lowestCounts && sixteenths <= 16 * highestCounts;
  }

  /** Volts that are still in the set are no fault of V: its zero is the highest it may have. */
  static Zeros keep(Zeros zeros, Memory memory) {
    int highest = 16 * of(memory, Channel.V).highestCounts();
    return new Zeros(
        zeros.iSixteenths(), zeros.jSixteenths(), Math.min(highest, zeros.vSixteenths()));
  }

  /** Whether each of them lies where it may. */
  static boolean holds(Zeros zeros, Memory memory) {
    return of(memory, Channel.I).holds(zeros.iSixteenths())
        && of(memory, Channel.J).holds(zeros.jSixteenths())
        && of(memory, Channel.V).holds(zeros.vSixteenths());
  }
}
