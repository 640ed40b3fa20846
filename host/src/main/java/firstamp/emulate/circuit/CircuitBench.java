package firstamp.emulate.circuit;

import firstamp.emulate.bench.Bench;
import firstamp.emulate.bench.FrontEnd;
import firstamp.emulate.bench.Hands;
import firstamp.emulate.bench.Joined;
import firstamp.emulate.wave.WaveformBench;
import firstamp.model.samples.Channel;
import firstamp.protocol.values.Inputs;

/**
 * An invented set: supply, leads, switch or look resistor, filter, rail and motor, solved step by
 * step with backward differences (stable at any step), at most 21 us each and much shorter while
 * the current moves fast.
 *
 * <p>Four volts in a chain: x at the supply's terminals, s on the set side of the switch, p behind
 * the filter resistor, b on the rail. Each has a capacitor or a resistance; what bends (current
 * limit, rectifier, {@link Limiter}, stages that draw from some volts on) is a straight piece per
 * step, tried again until the pieces fit.
 */
public final class CircuitBench implements Bench {
  private static final double LONGEST_STEP_S = 21e-6;
  private static final double SHORTEST_STEP_S = 0.05e-6;

  /** A step that moves the current by more is taken again, shorter. */
  private static final double TOO_FAR_A = 0.03;

  /** A step that moves it by less is followed by longer ones. */
  private static final double RESTLESS_A = 0.01;

  private static final double OPEN_SIEMENS = 1e-9;
  private static final int TRIES = 6;

  private final SetValues set;
  private final Script script;
  private final SignalChain chain;
  private Joined joined = Joined.OPEN;
  private double nowS;
  private double closedS = Double.NaN;
  private double openedS = Double.NEGATIVE_INFINITY;
  private double x;
  private double s;
  private double p;
  private double b;
  private double supplyV;
  private double filterV;
  private double railV;
  private double backEmfV;
  private double ampere;
  private double leadA;
  private boolean heldInStep;
  private double stepS = LONGEST_STEP_S;
  private final Limiter limiter = new Limiter();
  private boolean motorRuns;

  public CircuitBench(SetValues set, Script script, long seed) {
    this.set = set;
    this.script = script;
    this.chain = new SignalChain(set, seed);
    this.supplyV = set.rectifierPaths == 0 ? set.emfV : 0;
    this.x = supplyV;
  }

  @Override
  public double advance(double untilS, boolean watchHardShort) {
    while (untilS - nowS > 1e-12) {
      double step = Math.min(untilS - nowS, stepS);
      script.act(set, sinceClosed());
      double lead = attempt(step);
      while (Math.abs(lead - leadA) > TOO_FAR_A && step > SHORTEST_STEP_S) {
        step = Math.max(SHORTEST_STEP_S, step / 4);
        lead = attempt(step);
      }
      stepS =
          Math.abs(lead - leadA) > RESTLESS_A
              ? Math.max(SHORTEST_STEP_S, step / 2)
              : Math.min(LONGEST_STEP_S, step * 2);
      keep(step, lead);
      nowS += step;
    }
    return untilS;
  }

  /** The values it works with. */
  SetValues set() {
    return set;
  }

  private double sinceClosed() {
    return joined == Joined.CLOSED ? nowS - closedS : openedS - nowS;
  }

  /** The current in the leads at the end of a step; nothing is kept but the volts of the chain. */
  private double attempt(double h) {
    // A reversed supply stays blocked by the second transistor.
    double emf = set.supplyReversed ? 0 : set.sourceV(nowS);
    boolean limiting = false;
    boolean blocked = false;
    boolean held = joined == Joined.CLOSED && limiter.holding();
    boolean stages = b > set.stagesFromV;
    double joinOhm =
        switch (joined) {
          case OPEN -> 1 / OPEN_SIEMENS;
          case LOOK -> WaveformBench.LOOK_RESISTOR_OHM;
          case CLOSED -> set.switchOhm;
        };
    double inertiaOhm = set.leadHenry / h;
    motorRuns = set.motor && set.setJoined && p > set.motorFromV;
    double passRef = Math.min(set.passV, p - 0.7);
    double lead = leadA;
    for (int tries = 0; tries < TRIES; tries++) {
      double joinSiemens = held ? 0 : 1 / (joinOhm + inertiaOhm);
      double joinA = held ? limiter.ampere() : joinSiemens * inertiaOhm * leadA;
      chainOfFour(h, emf, limiting, blocked, stages, joinSiemens, joinA, passRef);
      lead = (x - s) * joinSiemens + joinA;
      double acrossV = x - s - inertiaOhm * (lead - leadA);
      boolean heldNow =
          joined == Joined.CLOSED
              && (held ? acrossV > lead * set.switchOhm : lead > limiter.ampere());
      double sourceA = (emf - x) / set.supplyOhm;
      boolean overLimit = sourceA > set.supplyLimitA;
      boolean backwards = set.rectifierPaths > 0 && sourceA < 0;
      boolean stagesNow = b > set.stagesFromV;
      if (overLimit == limiting && backwards == blocked && stagesNow == stages && heldNow == held) {
        break;
      }
      held = heldNow;
      limiting = overLimit;
      blocked = backwards;
      stages = stagesNow;
    }
    heldInStep = held;
    return lead;
  }

  /** Takes a step over. */
  private void keep(double h, double lead) {
    double acrossV = x - s - set.leadHenry / h * (lead - leadA);
    leadA = lead;
    limiter.step(h, acrossV, heldInStep);
    // The shunt sits behind the bleeder: it sees the set's current alone.
    ampere = joined == Joined.OPEN ? 0 : lead - s / set.bleederOhm;
    supplyV += (x - supplyV) / (set.supplyEsrOhm + h / supplyFarad()) * h / supplyFarad();
    filterV += (p - filterV) / (set.filterEsrOhm + h / set.filterFarad) * h / set.filterFarad;
    railV += (b - railV) / (set.railEsrOhm + h / set.railFarad) * h / set.railFarad;
    turnMotor(h);
  }

  /** Sets up and solves the four equations; x, s, p, b hold the volts at the end of the step. */
  private void chainOfFour(
      double h,
      double emf,
      boolean limiting,
      boolean blocked,
      boolean stages,
      double joinSiemens,
      double joinA,
      double passRef) {
    double supplyC = 1 / (set.supplyEsrOhm + h / supplyFarad());
    double sourceG = limiting || blocked ? 0 : 1 / set.supplyOhm;
    double sourceA = blocked ? 0 : limiting ? set.supplyLimitA : emf / set.supplyOhm;
    double a11 = supplyC + sourceG + joinSiemens;
    double r1 = supplyC * supplyV + sourceA - joinA;
    double filterG = set.setJoined ? 1 / set.filterOhm : OPEN_SIEMENS;
    double motorG = motorRuns ? 1 / set.motorOhm : 0;
    double a22 =
        joinSiemens
            + filterG
            + motorG
            + 1 / set.bleederOhm
            + (set.setJoined ? 1 / set.idleOhm + 1 / set.shortOhm : 0);
    double r2 = motorG * backEmfV + joinA;
    double filterC = 1 / (set.filterEsrOhm + h / set.filterFarad);
    double railC = 1 / (set.railEsrOhm + h / set.railFarad);
    double stagesG = stages ? set.stagesSiemens : 0;
    double a33 = filterG + filterC + 1 / set.leakOhm;
    double r3 = filterC * filterV;
    double a44 = railC + 1 / set.railLoadOhm + stagesG + 1 / set.railShortOhm;
    double r4 = railC * railV + stagesG * set.stagesFromV + set.railFedA;
    double upper34;
    double lower43;
    if (set.passV > 0) {
      double passG = passRef > railV ? set.passSiemens : 0;
      upper34 = -passG;
      lower43 = 0;
      r3 -= passG * passRef;
      a44 += passG;
      r4 += passG * passRef;
    } else {
      double dropperG = 1 / set.dropperOhm;
      upper34 = -dropperG;
      lower43 = -dropperG;
      a33 += dropperG;
      a44 += dropperG;
    }
    // Elimination from the supply to the rail, then back.
    double f2 = joinSiemens / a11;
    double d2 = a22 - f2 * joinSiemens;
    double q2 = r2 + f2 * r1;
    double f3 = filterG / d2;
    double d3 = a33 - f3 * filterG;
    double q3 = r3 + f3 * q2;
    double f4 = lower43 / d3;
    double d4 = a44 - f4 * upper34;
    b = (r4 - f4 * q3) / d4;
    p = (q3 - upper34 * b) / d3;
    s = (q2 + filterG * p) / d2;
    x = (r1 + joinSiemens * s) / a11;
  }

  private double supplyFarad() {
    return Math.max(set.supplyFarad, 1e-9);
  }

  private void turnMotor(double h) {
    double armatureA = motorRuns ? (s - backEmfV) / set.motorOhm : 0;
    double turningA = armatureA - (backEmfV > 0 ? set.motorFrictionA : 0);
    backEmfV = Math.max(0, backEmfV + turningA * h / set.motorInertiaFarad);
  }

  @Override
  public void join(Joined next) {
    if (next == Joined.CLOSED && joined != Joined.CLOSED) {
      closedS = nowS;
      limiter.closed(x - s);
      chain.closed(nowS);
    }
    if (joined == Joined.CLOSED && next != Joined.CLOSED) {
      openedS = nowS;
    }
    joined = next;
    leadA = joined == Joined.OPEN ? 0 : leadA;
    stepS = SHORTEST_STEP_S;
    if (next == Joined.OPEN) {
      ampere = 0;
    }
  }

  @Override
  public double value(Channel channel) {
    return switch (channel) {
      case I, J -> ampere;
      case V -> s;
      case R1 ->
          set.railClipOn
              ? set.railSign
                  * (b + set.railHumPeakV * Math.sin(2 * Math.PI * set.humHz * nowS) * on())
              : Double.NaN;
      case R2 -> set.reservoirClipOn ? set.railSign * s : Double.NaN;
      case R3 ->
          set.outputClipOn ? set.outputOffsetV + chain.outputV(nowS, b, on() > 0) : Double.NaN;
      case H -> set.headClipOn ? chain.headV(nowS, b, on() > 0) : 0;
      case M -> set.meterClipOn ? chain.meterV(nowS, b, on() > 0) : 0;
    };
  }

  @Override
  public boolean joined(Channel level) {
    return level == Channel.H ? set.headClipOn : set.meterClipOn;
  }

  @Override
  public Hands hands() {
    return set.path == null ? Hands.NONE : set.path;
  }

  private int on() {
    return joined == Joined.CLOSED ? 1 : 0;
  }

  @Override
  public int inputBits() {
    return (set.chassisClipOn ? Inputs.CHASSIS_CLIP_ON : 0)
        | (set.emfV > 1 ? Inputs.SUPPLY_PRESENT : 0)
        | (set.supplyReversed ? Inputs.SUPPLY_REVERSED : 0)
        | Inputs.ISOLATED_LINK;
  }

  @Override
  public double hardShortA() {
    return FrontEnd.HARD_SHORT_A;
  }

  @Override
  public boolean limiting() {
    return joined == Joined.CLOSED && limiter.seen();
  }

  @Override
  public boolean ended() {
    return false;
  }
}
