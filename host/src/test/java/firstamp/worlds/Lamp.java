package firstamp.worlds;

/**
 * A filament lamp: cold it draws twelve times its hot current, warm after about a tenth of a
 * second.
 *
 * <p>Ohms of tungsten go with kelvin to the power 1.2 (handbooks of physics, from memory), which
 * makes 1/12 between 293 K and 2300 K. Practice gives 1/10 to 1/15 for dial lamps and others
 * (common practice, no source).
 */
final class Lamp implements Feed.Load {
  private static final double COLD_K = 293;
  private static final double HOT_K = 2300;

  private final double coldOhm;
  private final double heatCapacity;
  private final double radiated;
  private double kelvin = COLD_K;

  Lamp(double volts, double amperes, double warmS) {
    double watts = volts * amperes;
    coldOhm = volts / amperes * Math.pow(COLD_K / HOT_K, 1.2);
    radiated = watts / (Math.pow(HOT_K, 4) - Math.pow(COLD_K, 4));
    heatCapacity = watts * warmS / (HOT_K - COLD_K) * 4;
  }

  @Override
  public double amperes(double volts, double seconds, double step) {
    double ohm = coldOhm * Math.pow(kelvin / COLD_K, 1.2);
    double amperes = volts / ohm;
    kelvin +=
        (volts * amperes - radiated * (Math.pow(kelvin, 4) - Math.pow(COLD_K, 4)))
            / heatCapacity
            * step;
    return amperes;
  }
}
