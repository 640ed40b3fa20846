package firstamp.emulate.circuit;

import firstamp.emulate.bench.Hands;
import java.util.Map;

/**
 * The signal path of an invented set as a roving clip finds it: levels when all is well, and one
 * joint that loses some until it is worked.
 */
public final class RovingPath implements Hands {
  private final Map<String, Double> wellDbv;
  private final Map<String, Boolean> behindFault;
  private final String faultyJoint;
  private final double[] lossDb;
  private int strokes;
  private boolean touched;
  private String at;
  private boolean headInput;

  /**
   * Makes it.
   *
   * @param wellDbv levels by {@code mode/point}
   * @param behindFault which of them lie behind the joint
   * @param faultyJoint that loses signal
   * @param lossDb at first, and after each stroke of the joint; the last one stays
   */
  public RovingPath(
      Map<String, Double> wellDbv,
      Map<String, Boolean> behindFault,
      String faultyJoint,
      double... lossDb) {
    this.wellDbv = Map.copyOf(wellDbv);
    this.behindFault = Map.copyOf(behindFault);
    this.faultyJoint = faultyJoint;
    this.lossDb = lossDb.clone();
  }

  @Override
  public void clipOn(String point, String mode, boolean head) {
    at = mode + "/" + point;
    headInput = head;
  }

  @Override
  public void clipOff() {
    at = null;
  }

  @Override
  public void work(String joint) {
    if (joint.equals(faultyJoint)) {
      strokes++;
    }
  }

  @Override
  public void touch(String joint, boolean now) {
    touched = now && joint.equals(faultyJoint);
  }

  double lossDb() {
    double loss = lossDb[Math.min(strokes, lossDb.length - 1)];
    return touched ? Math.abs(loss - 20) : loss;
  }

  /** Whether the clip of this input is on a point of the path. */
  boolean roves(boolean head) {
    return at != null && headInput == head;
  }

  /** Volts rms where the clip is. */
  double rmsV() {
    Double dbv = wellDbv.get(at);
    if (dbv == null) {
      return 0;
    }
    double loss = behindFault.getOrDefault(at, false) ? lossDb() : 0;
    return Math.pow(10, (dbv - loss) / 20);
  }
}
