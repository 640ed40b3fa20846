package firstamp.study;

import firstamp.account.Comparison;
import firstamp.log.PowerUpHeader;
import firstamp.model.samples.Calibration;

/**
 * Whether one probe box took two power-ups, so that its calibration drops out of their difference.
 *
 * <p>The box has no number of its own. A calibration that was made is as good as one: scales and
 * second of two boxes do not agree by chance. A box that was never calibrated is taken for the same
 * only at the same port, with the same firmware, and with a count of starts that has not gone back.
 */
public enum ProbeIdentity {
  /** The same calibration record: surely one. */
  ONE_CALIBRATION,
  /** Never calibrated, but all that is known agrees. */
  TAKEN_FOR_ONE,
  /** Two boxes, two calibrations, or not known. */
  NOT_KNOWN;

  /** Whether the calibration drops out. */
  public boolean isOne() {
    return this != NOT_KNOWN;
  }

  /** Judges two power-ups, the earlier first. */
  public static ProbeIdentity of(PowerUpHeader earlier, PowerUpHeader later) {
    Calibration one = earlier.hello().calibration();
    Calibration other = later.hello().calibration();
    if (!Comparison.oneCalibration(one, other) || one.kind() != other.kind()) {
      return NOT_KNOWN;
    }
    if (one.kind() == Calibration.Kind.VALID && one.calibratedEpochSeconds() > 0) {
      return ONE_CALIBRATION;
    }
    boolean inOrder = later.startedEpochMs() >= earlier.startedEpochMs();
    long first = (inOrder ? earlier : later).hello().bootId();
    long second = (inOrder ? later : earlier).hello().bootId();
    boolean sameFirmware =
        earlier.hello().firmwareMajor() == later.hello().firmwareMajor()
            && earlier.hello().firmwareMinor() == later.hello().firmwareMinor();
    return box(earlier).equals(box(later)) && sameFirmware && second >= first
        ? TAKEN_FOR_ONE
        : NOT_KNOWN;
  }

  /** What stands after a comma is about the run, not about the box. */
  private static String box(PowerUpHeader header) {
    return header.hello().kind().split(",", 2)[0];
  }
}
