package firstamp.analysis.calibrate;

/** Points that no scale can be made of; the message says which, and what to try. */
public final class CalibrationRefused extends Exception {
  private static final long serialVersionUID = 1L;

  CalibrationRefused(String message) {
    super(message);
  }
}
