package firstamp.emulate.circuit;

/**
 * The values of an invented set and of what feeds it; a scenario changes them, also while running.
 * SI units. Not shared between threads.
 */
public final class SetValues {
  /** Supply: open-circuit volts, resistance, current limit, capacitor and its own resistance. */
  public double emfV = 12.02;

  double emfRippleV;
  double emfRippleHz = 100;
  public double supplyOhm = 0.2;
  public double supplyLimitA = 1.5;
  public double supplyFarad = 470e-6;
  double supplyEsrOhm = 0.05;

  /** Inductance of the four leads together: half a microhenry each, half a metre of test lead. */
  double leadHenry = 2e-6;

  /** Rectified mains instead of a steady supply: 0 none, 1 half wave, 2 full wave. */
  public int rectifierPaths;

  double mainsHz = 50;
  double diodeV = 0.8;

  /** Shunt, two transistors and leads. */
  public double switchOhm = 0.1;

  double bleederOhm = 10_000;

  /** Set side: what lies straight across the supply lead. */
  public double idleOhm = 1000;

  /** A wire in the wrong place, across the supply lead. */
  public double shortOhm = Double.POSITIVE_INFINITY;

  /** Filter: series resistance, capacitor, its own resistance, its leak. */
  public double filterOhm = 4;

  public double filterFarad = 2000e-6;
  public double filterEsrOhm = 0.05;
  public double leakOhm = Double.POSITIVE_INFINITY;

  /** Rail: dropper resistor, or a series-pass transistor that holds {@link #passV}. */
  public double dropperOhm = 49.5;

  double passV;
  double passSiemens = 0.8;
  public double railFarad = 2200e-6;
  double railEsrOhm = 0.1;

  /** Load on the rail: a resistance, and stages that draw from some volts on. */
  public double railLoadOhm = 220;

  public double stagesFromV = 5;
  public double stagesSiemens = 0.0104;
  public double railShortOhm = Double.POSITIVE_INFINITY;

  /** Sign of rails against chassis: +1 negative chassis, -1 positive chassis. */
  public int railSign = 1;

  /** Motor: starts above some volts; armature, friction current, inertia as a capacitance. */
  public boolean motor = true;

  double motorFromV = 7;
  public double motorOhm = 20;
  public double motorFrictionA = 0.035;
  double motorInertiaFarad = 0.006;

  /** Record chain. */
  double toneHz = 400;

  public double toneFromS = 1.25;
  double toneUntilS = Double.POSITIVE_INFINITY;
  public double meterRmsV = 0.126;
  public double headOverMeter = 0.0102;
  public double headHumRmsV = 30e-6;
  public double meterHumRmsV = 0.2e-3;
  public double humHz = 100;

  /** Points that a roving clip can be put on, null = nobody moves a clip. */
  public RovingPath path;

  public boolean speech;
  public double chainFullV = 8.2;

  /** Hum on rail 1, on top of the filtered voltage. */
  double railHumPeakV;

  /** What a fault feeds into the rail from elsewhere, ampere. */
  public double railFedA;

  /** Clips and inputs. */
  public boolean railClipOn = true;

  public boolean headClipOn = true;
  public boolean meterClipOn = true;

  /** Clip 2 on the reservoir capacitor. */
  public boolean reservoirClipOn;

  /** Clip 3 on the loudspeaker output; its dc voltage, and the thump at the start. */
  public boolean outputClipOn;

  public double outputOffsetV;
  public double thumpV;

  public boolean chassisClipOn = true;
  public boolean supplyReversed;
  public boolean setJoined = true;

  /** Volts of the source at a time: of a battery, or behind the rectifier. */
  double sourceV(double nowS) {
    double angle = 2 * Math.PI * mainsHz * nowS;
    return switch (rectifierPaths) {
      case 0 ->
          emfRippleV == 0 ? emfV : emfV + emfRippleV * Math.sin(2 * Math.PI * emfRippleHz * nowS);
      case 1 -> emfV * Math.sin(angle) - diodeV;
      default -> emfV * Math.abs(Math.sin(angle)) - diodeV;
    };
  }
}
