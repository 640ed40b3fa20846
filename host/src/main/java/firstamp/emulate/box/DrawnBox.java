package firstamp.emulate.box;

import firstamp.protocol.values.CalibrationData;
import java.util.List;
import java.util.SplittableRandom;

/**
 * One of the boxes that the parts list allows: every part evenly within its limits of error, drawn
 * by a seed. The same seed gives the same box.
 *
 * @param assembled what its inputs do when it is new, at the temperature of the assembly
 * @param now the same after its age, at its temperature
 * @param clockShare of its resonator
 * @param bench what is used to calibrate it
 */
public record DrawnBox(
    List<BoxInput> assembled, List<BoxInput> now, double clockShare, BenchMeter bench) {
  /** Furthest from the temperature of the calibration that a bench room gets, kelvin. */
  private static final double ROOM_KELVIN = 5;

  private static final long STREAM = 0x50_1DE2EDL;

  /** Copies. */
  public DrawnBox {
    assembled = List.copyOf(assembled);
    now = List.copyOf(now);
  }

  /** A box within a year of its calibration, within 5 K of it. */
  public static DrawnBox of(long seed) {
    SplittableRandom random = new SplittableRandom(seed ^ STREAM);
    double kelvin = ROOM_KELVIN * random.nextDouble(-1, 1);
    double years = random.nextDouble();
    return of(seed, kelvin, years);
  }

  /**
   * A box.
   *
   * @param kelvin above the temperature of its calibration
   * @param years since its calibration
   */
  public static DrawnBox of(long seed, double kelvin, double years) {
    SplittableRandom random = new SplittableRandom(seed);
    Errors assembled = new Errors();
    Errors now = new Errors();
    for (Tolerance part : Tolerance.all()) {
      double error = part.centre() + part.limit() * random.nextDouble(-1, 1);
      double drift =
          part.perKelvin() * kelvin * random.nextDouble(-1, 1)
              + part.perYear() * years * random.nextDouble(-1, 1);
      assembled.add(part, error);
      now.add(part, error + drift);
    }
    return new DrawnBox(
        assembled.inputs(), now.inputs(), assembled.clockShare, BenchMeter.drawn(random));
  }

  /** Never calibrated. */
  public Box blank() {
    return new Box(now, clockShare, null);
  }

  /** Calibrated when it was new. */
  public Box calibrated() {
    return new Box(now, clockShare, kept());
  }

  /** What the calibration of the new box has written. */
  public CalibrationData kept() {
    return new BenchCalibration(assembled, bench).kept();
  }
}
