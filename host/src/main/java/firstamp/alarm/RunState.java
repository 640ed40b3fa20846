package firstamp.alarm;

import firstamp.model.JobSheet;
import firstamp.model.Look;
import firstamp.model.SwitchState;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.Scaling;
import firstamp.model.samples.Zero;

/** State of the power-up: switch, times, zeros. */
final class RunState {
  static final long NEVER = Long.MIN_VALUE;

  private final Calibration calibration;
  private final RuleSetup setup;
  private JobSheet sheet;
  private Scaling scaling;
  private SwitchState state = SwitchState.OFF;
  private Look look;
  private long firstInput = NEVER;
  private long lookStart = NEVER;
  private long firstClosed = NEVER;
  private long closed = NEVER;
  private long opened = NEVER;
  private boolean soak;

  RunState(JobSheet sheet, Calibration calibration, RuleSetup setup) {
    this.sheet = sheet;
    this.calibration = calibration;
    this.setup = setup;
    this.scaling = new Scaling(calibration, Zero.NONE);
  }

  /** The probe has taken another limit: rules and trips are judged against it from now on. */
  void limitChanged(firstamp.model.ProbeEvent.LimitChanged event) {
    sheet = event.limit().on(sheet, event.rail(), event.value());
  }

  JobSheet sheet() {
    return sheet;
  }

  /** Nobody watches from here on, or somebody does again. */
  void soak(boolean now) {
    soak = now;
  }

  boolean soaks() {
    return soak;
  }

  RuleSetup setup() {
    return setup;
  }

  Scaling scaling() {
    return scaling;
  }

  /** Finding of the last look, null = none. */
  Look look() {
    return look;
  }

  void input(long micros) {
    if (firstInput == NEVER) {
      firstInput = micros;
    }
  }

  void looked(Look found) {
    look = found;
    lookStart = found.startMicros();
    scaling = new Scaling(calibration, found.zero());
  }

  void switched(SwitchState next, long micros) {
    if (next == SwitchState.ON && state != SwitchState.ON) {
      closed = micros;
      opened = NEVER;
      if (firstClosed == NEVER) {
        firstClosed = micros;
      }
    } else if (next != SwitchState.ON) {
      open(micros);
    }
    if (next == SwitchState.LOOK || next == SwitchState.CHECK && lookStart == NEVER) {
      lookStart = micros;
    }
    state = next;
  }

  /** The switch opened, as far as known; a later report of the same opening changes nothing. */
  void open(long micros) {
    if (closed != NEVER && opened == NEVER) {
      opened = micros;
    }
    if (state == SwitchState.ON) {
      state = SwitchState.OFF;
    }
  }

  boolean on() {
    return closed != NEVER && opened == NEVER;
  }

  boolean everClosed() {
    return closed != NEVER;
  }

  /** Whether a stretch of time lies wholly within the last closing. */
  boolean whileOn(long fromMicros, long toMicros) {
    return closed != NEVER && fromMicros >= closed && (opened == NEVER || toMicros <= opened);
  }

  /** Whether it lies wholly after the last opening, with the switch (and the look) open. */
  boolean afterOff(long fromMicros) {
    return opened != NEVER
        && fromMicros >= opened
        && (state == SwitchState.OFF || state == SwitchState.TRIPPED);
  }

  long closedMicros() {
    return closed;
  }

  long openedMicros() {
    return opened;
  }

  /** What milliseconds are counted from now: the first closing, else the look, else the start. */
  long zeroMicros() {
    if (firstClosed != NEVER) {
      return firstClosed;
    }
    return lookStart != NEVER ? lookStart : firstInput == NEVER ? 0 : firstInput;
  }

  /** Volts of the supply without the look's or the set's load, else nominal. */
  double supplyVolts() {
    if (look == null || look.pairs() == 0) {
      return sheet.supply().nominalV();
    }
    return lookVolts() + lookAmpere() * setup.lookOhm();
  }

  /** One step of the volts input. */
  double voltsStep() {
    return Math.abs(calibration.scale(Channel.V).perCount());
  }

  double lookVolts() {
    return scaling.value(Channel.V, look.endV16() / 16.0);
  }

  double lookAmpere() {
    return scaling.value(Channel.J, look.endJ16() / 16.0);
  }

  /** Capacitance that the look saw, farad; 0 = not known. */
  double lookFarad() {
    if (look == null || look.pairs() == 0) {
      return 0;
    }
    double volts = lookVolts();
    double ampere = lookAmpere();
    double step = calibration.scale(Channel.J).perCount();
    if (volts <= 0) {
      return 0;
    }
    double sumV = volts(look.sumV(), look.pairs());
    double sumJ = step * (look.sumJ() - look.zero().counts(Channel.J) * (double) look.pairs());
    double leak = ampere < Math.abs(step) ? 0 : sumV * ampere / volts;
    return Math.max(0, (sumJ - leak) * 0.002 / volts);
  }

  private double volts(long sum, int pairs) {
    return calibration.scale(Channel.V).perCount()
        * (sum - look.zero().counts(Channel.V) * (double) pairs);
  }
}
