package firstamp.bench;

import firstamp.analysis.figures.InrushExpected;
import firstamp.model.JobSheet;
import firstamp.model.ProbeHello;
import firstamp.model.Summary;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;

/**
 * How finely one probe box measures, shown beside its figures.
 *
 * @param stepV volts of one count of V: finer than that nothing is seen
 * @param resistorOhm through which it looks
 * @param inrush what the look foretells of the closing, null = nothing or not known yet
 * @param levelsCalibrated whether the gains of meter and head were ever measured
 */
public record LookScale(
    double stepV, double resistorOhm, InrushExpected inrush, boolean levelsCalibrated) {
  /** Before the look, of a calibrated box. */
  public LookScale(double stepV, double resistorOhm) {
    this(stepV, resistorOhm, null, true);
  }

  /** Of one probe. */
  static LookScale of(ProbeHello hello) {
    Calibration calibration = hello.calibration();
    boolean levels = calibration.calibrated(Channel.H) && calibration.calibrated(Channel.M);
    double stepV = Math.abs(calibration.scale(Channel.V).perCount());
    return new LookScale(stepV, hello.lookOhm(), null, levels);
  }

  /** The same with what a look foretells. */
  LookScale after(JobSheet sheet, Summary.LookFigures look) {
    InrushExpected expected = InrushExpected.of(sheet, look, resistorOhm);
    return new LookScale(stepV, resistorOhm, expected, levelsCalibrated);
  }

  /**
   * Whether meter and head are to be marked as not calibrated; before a box is known they are not.
   */
  public static boolean levelsUncalibrated(Snapshot now) {
    LookScale scale = now.beside() == null ? null : now.beside().lookScale();
    return scale != null && !scale.levelsCalibrated();
  }
}
