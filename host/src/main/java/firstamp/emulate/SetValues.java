package firstamp.emulate;

/**
 * The values of an invented set and of what feeds it; a scenario changes them, also while running.
 * SI units. Not shared between threads.
 */
final class SetValues {
  /** Supply: open-circuit volts, resistance, current limit, capacitor and its own resistance. */
  double emfV = 12.02;

  double emfRippleV;
  double emfRippleHz = 100;
  double supplyOhm = 0.2;
  double supplyLimitA = 1.5;
  double supplyFarad = 470e-6;
  double supplyEsrOhm = 0.05;

  /** Inductance of the four leads together: half a microhenry each, half a metre of test lead. */
  double leadHenry = 2e-6;

  /** Rectified mains instead of a steady supply: 0 none, 1 half wave, 2 full wave. */
  int rectifierPaths;

  double mainsHz = 50;
  double diodeV = 0.8;

  /** Shunt, two transistors and leads. */
  double switchOhm = 0.1;

  double bleederOhm = 10_000;

  /** Set side: what lies straight across the supply lead. */
  double idleOhm = 1000;

  /** A wire in the wrong place, across the supply lead. */
  double shortOhm = Double.POSITIVE_INFINITY;

  /** Filter: series resistance, capacitor, its own resistance, its leak. */
  double filterOhm = 4;

  double filterFarad = 2000e-6;
  double filterEsrOhm = 0.05;
  double leakOhm = Double.POSITIVE_INFINITY;

  /** Rail: dropper resistor, or a series-pass transistor that holds {@link #passV}. */
  double dropperOhm = 49.5;

  double passV;
  double passSiemens = 0.8;
  double railFarad = 2200e-6;
  double railEsrOhm = 0.1;

  /** Load on the rail: a resistance, and stages that draw from some volts on. */
  double railLoadOhm = 220;

  double stagesFromV = 5;
  double stagesSiemens = 0.0104;
  double railShortOhm = Double.POSITIVE_INFINITY;

  /** Sign of rails against chassis: +1 negative chassis, -1 positive chassis. */
  int railSign = 1;

  /** Motor: starts above some volts; armature, friction current, inertia as a capacitance. */
  boolean motor = true;

  double motorFromV = 7;
  double motorOhm = 20;
  double motorFrictionA = 0.035;
  double motorInertiaFarad = 0.006;

  /** Record chain. */
  double toneHz = 400;

  double toneFromS = 1.25;
  double toneUntilS = Double.POSITIVE_INFINITY;
  double meterRmsV = 0.126;
  double headOverMeter = 0.0102;
  double headHumRmsV = 30e-6;
  double meterHumRmsV = 0.2e-3;
  double humHz = 100;

  /** Points that a roving clip can be put on, null = nobody moves a clip. */
  RovingPath path;

  boolean speech;
  double chainFullV = 8.2;

  /** Hum on rail 1, on top of the filtered voltage. */
  double railHumPeakV;

  /** What a fault feeds into the rail from elsewhere, ampere. */
  double railFedA;

  /** Clips and inputs. */
  boolean railClipOn = true;

  /** Clip 2 on the reservoir capacitor. */
  boolean reservoirClipOn;

  /** Clip 3 on the loudspeaker output; its dc voltage, and the thump at the start. */
  boolean outputClipOn;

  double outputOffsetV;
  double thumpV;

  boolean chassisClipOn = true;
  boolean supplyReversed;
  boolean setJoined = true;
}
