package firstamp.emulate.probe;

import firstamp.emulate.bench.Joined;
import firstamp.emulate.line.FrameOutput;
import firstamp.model.PedalJob;
import firstamp.model.samples.Channel;
import firstamp.model.samples.SamplePlan;
import firstamp.protocol.codes.CalibrationState;
import firstamp.protocol.codes.LookOutcome;
import firstamp.protocol.codes.PedalDuty;
import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.codes.SelfTestFault;
import firstamp.protocol.codes.SwitchCause;
import firstamp.protocol.codes.TripCause;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.rules.TripDecision;
import firstamp.protocol.rules.TripRules;
import firstamp.protocol.rules.Zeros;
import firstamp.protocol.values.Clips;
import firstamp.protocol.values.Inputs;
import firstamp.protocol.values.LookParameters;
import firstamp.protocol.values.SelfTest;
import firstamp.protocol.values.TripLimits;
import java.util.function.Predicate;

/**
 * What the chip decides, from its start to its reset: states, look, trips, latch. Ticks are
 * microseconds since the start.
 */
public final class ProbeMachine {
  static final int DEFAULT_SILENCE_MILLIS = 2000;

  /** Looks at the chassis clip, 2 ms apart, that a scraping clip may be off. */
  private static final int CLIP_OFF_LOOKS = 5;

  /** Plans that the read-back of the clips takes, and the gate to have its volts. */
  private static final int PUMP_PLANS = 4;

  private static final double FIFTEEN_VOLTS = 15e6;

  /** A supply of so much is seen across the open switch. */
  private static final double SEEN_VOLTS = 6e6;

  private static final int[] TRIP_AGAIN_CONVERSIONS = {800, 3200};

  private final Memory memory;
  private final FrameOutput outlet;
  private final SwitchPath path;
  private final StreamOut stream;
  private final CaptureRing capture = new CaptureRing();
  private final Presses presses;
  private final int bootSelfTestBits;
  private int selfTestBits;
  private ProbeState state = ProbeState.OFF;
  private TripLimits limits;
  private Zeros zeros;
  private Inputs inputs = new Inputs(0);
  private LookParameters lookParameters;
  private boolean closeAfterLook;
  private OffCheck check;
  private ZeroTaking zeroTaking;
  private LookWatch look;
  private Runnable atBoundary;
  private TripRules watch;
  private LimiterWatch limiter;
  private final ClipReader clips;
  private int lastV;
  private int stepPlans;
  private boolean limiterTested;
  private LimiterTest limiterTest;
  private boolean pumped;
  private boolean supplySeen;
  private LookOutcome found;
  private long n;
  private long stateFrom;
  private long lastFrameMicros;
  private boolean hostSeen;
  private long lastI;
  private int lastICounts;
  private int pendingICounts;
  private long trippedAt = Long.MIN_VALUE / 2;
  private int clipOffLooks;
  private final Afterwards afterwards;
  private int tripsSentAgain = TRIP_AGAIN_CONVERSIONS.length;

  public ProbeMachine(
      Memory memory,
      FrameOutput outlet,
      SwitchPath path,
      Predicate<Channel> levelJoined,
      int selfTestBits,
      PedalJob pedalJob) {
    this.memory = memory;
    this.outlet = outlet;
    this.path = path;
    this.clips = new ClipReader(levelJoined);
    this.presses = new Presses(outlet, pedalJob);
    this.stream = new StreamOut(outlet);
    boolean damaged = memory.calibrationState() == CalibrationState.DAMAGED;
    this.bootSelfTestBits = selfTestBits | (damaged ? 1 << SelfTestFault.CALIBRATION.code() : 0);
    this.selfTestBits = bootSelfTestBits;
    this.afterwards = new Afterwards(ZeroBand.of(memory, Channel.J).highestCounts());
    if (memory.latched()) {
      state = ProbeState.TRIPPED;
    }
  }

  public ProbeState state() {
    return state;
  }

  Inputs inputs() {
    return inputs;
  }

  SelfTest selfTest() {
    return new SelfTest(selfTestBits);
  }

  /** Repeats the self-test. */
  void repeatSelfTest() {
    selfTestBits = bootSelfTestBits;
  }

  StreamOut stream() {
    return stream;
  }

  CaptureRing capture() {
    return capture;
  }

  Zeros zeros() {
    return zeros;
  }

  TripLimits limits() {
    return limits;
  }

  int silenceMillis() {
    return limits == null ? DEFAULT_SILENCE_MILLIS : limits.silenceMillis();
  }

  long nowMicros() {
    return SamplePlan.microsOf(n);
  }

  PedalDuty pedalDuty() {
    return presses.duty();
  }

  void pedalDuty(PedalDuty next) {
    presses.duty(next);
  }

  Clips clips() {
    return clips.read();
  }

  /** Reads the clips back; a status tells them. */
  void readClips() {
    clips.ask();
    stepPlans = 0;
  }

  /** Whether they have been read back since they were asked for; once. */
  public boolean clipsRead() {
    return clips.done(stepPlans);
  }

  /** A valid frame has come. */
  void hostHeard() {
    hostSeen = true;
    lastFrameMicros = nowMicros();
  }

  public boolean hostThere() {
    return hostSeen && nowMicros() - lastFrameMicros < 3_000_000;
  }

  public void readInputs(int bits) {
    inputs = new Inputs(bits | (limiterTested ? Inputs.LIMITER_TESTED : 0));
  }

  void takeLimits(TripLimits next) {
    limits = next;
    if (watch != null) {
      watch.tighten(next);
    }
  }

  /** The start of conversion {@code index}: what acts on boundaries, inputs and silence. */
  public void begin(long index, int inputBits) {
    n = index;
    readInputs(inputBits);
    if (n % SamplePlan.CONVERSIONS_PER_READING == 0 && atBoundary != null) {
      Runnable due = atBoundary;
      atBoundary = null;
      due.run();
    }
    if (n % SamplePlan.SLOTS == 0) {
      stepPlans++;
      everyPlan();
    }
  }

  private void everyPlan() {
    presses.look(inputs, nowMicros(), this::off);
    if (presses.footLifted() && joined()) {
      off(SwitchCause.PEDAL);
    }
    if (inputs.chassisClipOn()) {
      clipOffLooks = 0;
    } else if (clipOffLooks < CLIP_OFF_LOOKS) {
      clipOffLooks++;
    } else {
      lost(TripCause.CHASSIS_CLIP, SwitchCause.CHASSIS_CLIP, nowMicros(), inputs.bits());
    }
    if (nowMicros() - lastFrameMicros >= silenceMillis() * 1000L) {
      lost(TripCause.HOST_SILENCE, SwitchCause.HOST_SILENCE, lastFrameMicros, 0);
    }
    sendTripAgain();
  }

  /** Whether what is down or up keeps the switch from closing. */
  boolean footBars() {
    return presses.barClosing(inputs);
  }

  private boolean joined() {
    return state == ProbeState.CHECK || state == ProbeState.LOOK || state == ProbeState.ON;
  }

  /** Something that must be there is gone: a trip while on, an off before. */
  private void lost(TripCause cause, SwitchCause by, long crossedMicros, int value) {
    if (state == ProbeState.ON) {
      trip(
          new TripDecision(cause, ProbeMessage.Trip.NO_CHANNEL, 1, crossedMicros, value, 0),
          nowMicros(),
          nowMicros());
    } else if (state == ProbeState.CHECK || state == ProbeState.LOOK) {
      off(by);
    }
  }

  /** The result of the conversion begun last. */
  public void result(Channel channel, int counts) {
    remember(channel, counts);
    boolean captured = channel == Channel.I && capture.conversion(counts);
    switch (state) {
      case CHECK -> inCheck(channel, counts);
      case LOOK -> inLook(channel, counts);
      case ON -> {
        if (limiter.conversion(n, inputs.limiting(), channel == Channel.V ? counts : -1, watch)) {
          hardShort(channel == Channel.I ? counts : lastICounts);
          break;
        }
        TripDecision decision = watch.conversion(n, counts);
        if (decision != null) {
          trip(decision, nowMicros(), nowMicros() + TripRules.PIN_LOW_MICROS);
        }
      }
      default -> {}
    }
    if (channel == Channel.I) {
      lastICounts = pendingICounts;
    }
    SelfTestFault fault = afterwards.conversion(n, channel, counts);
    if (fault != null) {
      selfTestBits |= 1 << fault.code();
    }
    if (fault == SelfTestFault.SHUNT) {
      lost(TripCause.SELF_TEST, SwitchCause.LOOK, nowMicros(), selfTestBits);
    }
    stream.conversion(n, channel, counts);
    if (captured) {
      sendCapture();
    }
  }

  private void remember(Channel channel, int counts) {
    switch (channel) {
      case I -> {
        lastI = n;
        // What the limits have seen before this one stays until they have looked at it.
        pendingICounts = counts;
      }
      case V -> lastV = counts;
      case R1, R2, R3 -> clips.rail(channel, counts);
      default -> {}
    }
  }

  private void inCheck(Channel channel, int counts) {
    if (check == null) {
      boolean supplyGone = pumped && supplySeen && !inputs.supplyPresent();
      if (supplyGone || pumped && limiterTest.lightsUp(channel, counts)) {
        endLook(LookOutcome.LIMITER, (int) ((n - stateFrom) / 16));
      } else {
        testsAndLook();
      }
      return;
    }
    LookOutcome fault = check.conversion(n, channel, counts);
    if (fault != null) {
      endLook(fault, (int) ((n - stateFrom) / 16));
      return;
    }
    if (zeroTaking == null) {
      zeroTaking = channel == Channel.V && check.quiet() ? new ZeroTaking() : null;
      return;
    }
    if (zeroTaking.conversion((int) (n % SamplePlan.SLOTS), channel, counts)) {
      limiterTest = LimiterTest.before(zeroTaking.zeros());
      zeros = ZeroBand.keep(zeroTaking.zeros(), memory);
      check = null;
      stepPlans = 0;
      if (!ZeroBand.holds(zeros, memory)) {
        endLook(LookOutcome.NO_ZERO, (int) ((n - stateFrom) / 16));
      }
    }
  }

  /** The clips are read back, then the limiter is tested. */
  private void testsAndLook() {
    if (atBoundary != null || stepPlans < ClipReader.PLANS) {
      return;
    }
    if (stepPlans == ClipReader.PLANS) {
      clips.take();
    }
    if (!pumped) {
      supplySeen = inputs.supplyPresent();
      pump(true);
    }
    if (inputs.supplyReversed()) {
      endLook(LookOutcome.REVERSED, 0);
    } else if (stepPlans >= ClipReader.PLANS + PUMP_PLANS) {
      limiterTested = true;
      pump(false);
      if (lookParameters.skip()) {
        endLook(LookOutcome.SKIPPED, 0);
      } else {
        atBoundary = this::beginLook;
      }
    }
  }

  private void pump(boolean on) {
    pumped = on;
    path.pump(on);
  }

  private void beginLook() {
    look = new LookWatch(lookParameters, zeros, limits.lookOverJCounts());
    enter(ProbeState.LOOK, SwitchCause.USER, nowMicros());
    path.join(Joined.LOOK);
  }

  private void inLook(Channel channel, int counts) {
    if (atBoundary != null) {
      return;
    }
    if (found == null && look.conversion(channel, counts)) {
      LookOutcome outcome = look.outcome(inputs.supplyReversed());
      outcome = lets(outcome) && supplyUnseen() ? LookOutcome.LIMITER : outcome;
      stepPlans = 0;
      if (lets(outcome) && closeAfterLook) {
        found = outcome;
        limiterTest = LimiterTest.behindTheLook(zeros, look);
        pump(true);
      } else {
        endLook(outcome, look.durationMillis());
      }
    } else if (found != null) {
      inReady(channel, counts);
    }
  }

  /** The gate has its volts again, and nothing may jump while the pin is low. */
  private void inReady(Channel channel, int counts) {
    if (limiterTest.lightsUp(channel, counts)) {
      limiterTested = false;
      endLook(LookOutcome.LIMITER, look.durationMillis());
    } else if (stepPlans >= PUMP_PLANS) {
      pumped = false;
      endLook(found, look.durationMillis());
    }
  }

  /** What does not see the supply across the open switch would not see the limiter hold either. */
  private boolean supplyUnseen() {
    return !supplySeen && supplyCounts() > countsOfV(SEEN_VOLTS);
  }

  /** As V would show the supply, so with its zero. */
  private int supplyCounts() {
    return (look.supply() + zeros.vSixteenths()) / 16;
  }

  private int countsOfV(double microvolts) {
    return memory.calibration().scales().get(Channel.V.ordinal()).countsAt(microvolts);
  }

  private static boolean lets(LookOutcome outcome) {
    return outcome.code() <= LookOutcome.SKIPPED.code();
  }

  private void endLook(LookOutcome outcome, int durationMillis) {
    boolean closes = lets(outcome) && closeAfterLook;
    Zeros taken = zeros == null ? new Zeros(0, 0, 0) : zeros;
    boolean looked = look != null;
    outlet.send(
        new ProbeMessage.LookResult(
            outcome,
            closes,
            durationMillis,
            taken.iSixteenths(),
            taken.jSixteenths(),
            taken.vSixteenths(),
            looked ? look.pairs() : 0,
            looked ? look.endV() : 0,
            looked ? look.endJ() : 0,
            looked ? look.sumV() : 0,
            looked ? look.sumJ() : 0,
            clips.read()),
        nowMicros());
    if (closes) {
      capture.start();
      atBoundary = this::close;
    } else {
      off(SwitchCause.LOOK);
    }
  }

  private void close() {
    memory.clearLatch();
    watch = new TripRules(limits, zeros, n);
    limiter = limiterWatch();
    boolean foretold = look != null && limits.meanISixteenths() == 0;
    afterwards.closed(n, foretold ? look.highestVBehindIt() : Converter.HIGHEST_COUNTS);
    path.join(Joined.CLOSED);
    enter(ProbeState.ON, SwitchCause.USER, nowMicros());
  }

  private LimiterWatch limiterWatch() {
    if (look == null) {
      return LimiterWatch.withoutLook(n);
    }
    boolean over15 = supplyCounts() > countsOfV(FIFTEEN_VOLTS);
    return LimiterWatch.afterLook(n, supplyCounts(), look.endV() / 16, over15);
  }

  /** Starts check, zero and look. */
  void arm(LookParameters parameters, boolean close) {
    lookParameters = parameters;
    closeAfterLook = close;
    limiterTested = false;
    found = null;
    clips.forget();
    check = new OffCheck(n, memory);
    zeroTaking = null;
    look = null;
    capture.start();
    enter(ProbeState.CHECK, SwitchCause.USER, nowMicros());
  }

  /** Opens switch and look path; ends check and look. No trip. */
  void off(SwitchCause by) {
    pump(false);
    path.join(Joined.OPEN);
    check = null;
    zeroTaking = null;
    look = null;
    found = null;
    atBoundary = null;
    watch = null;
    ProbeState rest = memory.latched() ? ProbeState.TRIPPED : ProbeState.OFF;
    if (state != rest) {
      enter(rest, by, nowMicros());
    }
  }

  /** The limiter has held the current for too long. */
  private void hardShort(int counts) {
    long crossed = SamplePlan.microsOf(n - limiter.span() + 1);
    trip(
        new TripDecision(
            TripCause.HARD_SHORT,
            ProbeMessage.Trip.NO_CHANNEL,
            limiter.count(),
            crossed,
            counts,
            0),
        nowMicros(),
        nowMicros() + TripRules.PIN_LOW_MICROS);
  }

  private void trip(TripDecision decision, long decidedMicros, long pinLowMicros) {
    path.join(Joined.OPEN);
    long heat = watch == null ? 0 : watch.i2tCounts2();
    if (decision.cause() == TripCause.SELF_TEST && decision.channel() == Channel.J.ordinal()) {
      selfTestBits |= 1 << SelfTestFault.CURRENTS.code();
    }
    int number = memory.nextTripNumber();
    memory.latch(
        new ProbeMessage.Trip(
            number,
            decision.cause(),
            decision.channel(),
            decision.confirmed(),
            decision.crossedTickMicros() & 0xFFFF_FFFFL,
            decidedMicros & 0xFFFF_FFFFL,
            decision.cause() == TripCause.HOST_SILENCE ? 0 : decision.value(),
            decision.limit(),
            heat,
            limits.i2tBudgetCounts2(),
            (int) (memory.bootId() & 0xFFFF),
            limiter == null ? 0 : limiter.count(),
            lastV),
        pinLowMicros);
    watch = null;
    atBoundary = null;
    capture.trip(number, SamplePlan.microsOf(lastI));
    enter(ProbeState.TRIPPED, SwitchCause.TRIP, pinLowMicros);
    sendTrip();
    trippedAt = n;
    tripsSentAgain = 0;
  }

  private void enter(ProbeState next, SwitchCause by, long tickMicros) {
    if (state == ProbeState.ON) {
      afterwards.opened(n);
    } else if (next == ProbeState.LOOK) {
      afterwards.looking();
    }
    state = next;
    stateFrom = n;
    outlet.send(new ProbeMessage.SwitchChanged(next, by), tickMicros);
  }

  /** Clears the latch; nothing closes. */
  void clearTrip() {
    memory.clearLatch();
    enter(ProbeState.OFF, SwitchCause.USER, nowMicros());
  }

  private void sendTripAgain() {
    if (tripsSentAgain < TRIP_AGAIN_CONVERSIONS.length
        && n - trippedAt >= TRIP_AGAIN_CONVERSIONS[tripsSentAgain]) {
      tripsSentAgain++;
      sendTrip();
    }
  }

  void sendTrip() {
    outlet.send(memory.trip(), memory.tripTickMicros());
  }

  void sendCapture() {
    for (CaptureRing.Block block : capture.blocks()) {
      outlet.send(block.message(), block.tickMicros());
    }
  }
}
