package firstamp.worlds;

/**
 * A small permanent-magnet motor with three commutator segments, with or without a contact governor
 * that opens above its speed. Its speed and its switching come from its own equations: volts = ohms
 * times amperes + speed times a constant, torque = the same constant times amperes (textbooks of
 * electrical machines). That a small tape motor runs on 40 to 150 mA and draws 4 to 8 times that
 * when it stands is common practice, no source.
 */
final class Motor implements Feed.Load {
  private final double ohm;
  private final double voltsPerSpeed;
  private final double inertia;
  private final double torque;
  private final double startS;
  private final double governedSpeed;
  private double speed;
  private double angle;
  private boolean closed = true;

  /** Whether it is held; a switch for the fault. */
  boolean blocked;

  double stopS = Double.MAX_VALUE;

  /**
   * A motor by what a bench sees of it.
   *
   * @param ohm of the winding
   * @param volts nominal
   * @param runningA at nominal volts and speed
   * @param startupS roughly, time constant of the start
   * @param startS when it is switched on
   * @param governedShare speed of the governor as share of the free speed, 2 = no governor
   * @param freeHz turns a second at nominal volts
   */
  Motor(
      double ohm,
      double volts,
      double runningA,
      double startupS,
      double startS,
      double governedShare,
      double freeHz) {
    this.ohm = ohm;
    double free = 2 * Math.PI * freeHz;
    voltsPerSpeed = (volts - runningA * ohm) / free;
    torque = runningA * voltsPerSpeed * Math.min(1, governedShare);
    inertia = startupS * voltsPerSpeed * voltsPerSpeed / ohm;
    governedSpeed = governedShare * free;
    this.startS = startS;
  }

  @Override
  public double amperes(double volts, double seconds, double step) {
    if (seconds < startS || seconds > stopS) {
      speed = Math.max(0, speed - torque / inertia * step);
      return 0;
    }
    closed = closed ? speed < governedSpeed * 1.004 : speed < governedSpeed * 0.996;
    double ripple = 1 + 0.08 * Math.abs(Math.sin(3 * angle));
    double amperes = closed ? Math.max(0, (volts - voltsPerSpeed * speed) / (ohm * ripple)) : 0;
    double net = voltsPerSpeed * amperes - (speed > 0 || amperes > 0 ? torque : 0);
    speed = blocked ? 0 : Math.max(0, speed + net / inertia * step);
    angle += speed * step;
    return amperes;
  }
}
