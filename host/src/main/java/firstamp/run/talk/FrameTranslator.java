package firstamp.run.talk;

import firstamp.model.Look;
import firstamp.model.ProbeEvent;
import firstamp.model.Trip;
import firstamp.model.TripCause;
import firstamp.model.samples.Capture;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import firstamp.model.samples.SamplePlan;
import firstamp.model.samples.Zero;
import firstamp.pipeline.StreamSink;
import firstamp.protocol.codes.PressKind;
import firstamp.protocol.codes.PressSource;
import firstamp.protocol.frame.RawBlock;
import firstamp.protocol.frame.TickUnwrapper;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.ChannelSum;
import java.util.Arrays;
import java.util.List;

/**
 * Frames to conversions, readings and events in unwrapped probe time; finds the gaps and counts
 * what came and what did not.
 *
 * <p>After a restart of the probe its tick starts at 0: time continues here from where the host
 * believes it to be, on a 10 ms boundary, so that what follows can be kept in the same power-up.
 * Not thread-safe: belongs to the session thread.
 */
public final class FrameTranslator {
  private static final long READING_MICROS = 10_000;
  private static final int PER_READING = SamplePlan.CONVERSIONS_PER_READING;

  private final StreamSink sink;
  private final CaptureAssembly captures = new CaptureAssembly();
  private TickUnwrapper unwrapper = new TickUnwrapper();
  private boolean anchored;
  private long baseMicros;
  private long lastMicros;
  private long nextIndex = -1;
  private long received;
  private long lost;
  private int gaps;
  private int lastTripNumber;
  private int inputBits = -1;
  private int selfTestBits;

  public FrameTranslator(StreamSink sink) {
    this.sink = sink;
  }

  /** Latest probe time seen in any frame, microseconds, unwrapped. */
  public long lastMicros() {
    return lastMicros;
  }

  /** Good conversions since {@link #streamStarts()}. */
  public long received() {
    return received;
  }

  /** Conversions missing between good ones. */
  public long lost() {
    return lost;
  }

  /** Holes in the stream. */
  public int gaps() {
    return gaps;
  }

  /** The next conversion begins the stream: none before it is missed. */
  public void streamStarts() {
    nextIndex = -1;
  }

  /**
   * The probe was restarted: its tick begins at 0 again.
   *
   * @param estimateMicros where the host believes probe time to be, on the old count
   */
  public void restarted(long estimateMicros) {
    baseMicros = (Math.max(estimateMicros, lastMicros) / READING_MICROS + 1) * READING_MICROS;
    unwrapper = new TickUnwrapper();
    anchored = false;
  }

  /** Probe time of a tick, unwrapped; one a little older than the newest is taken back in time. */
  long micros(long tick) {
    long micros = baseMicros + unwrapper.unwrap(tick);
    lastMicros = Math.max(lastMicros, micros);
    return micros;
  }

  private boolean anchor(long tick, int place, int period) {
    // Wrapped ticks alone do not say which conversion starts there; the place in the plan does.
    anchored = anchored || unwrapper.anchor(tick, place, period);
    return anchored;
  }

  /** A block of conversions; the array is copied. */
  public void raw(RawBlock block) {
    if (!anchor(block.tickMicros(), block.firstSlot(), SamplePlan.SLOTS)) {
      return;
    }
    long first = SamplePlan.indexAt(micros(block.tickMicros()));
    if ((first & SamplePlan.SLOTS - 1) == block.firstSlot() && admit(first, block.count())) {
      sink.accept(new ConversionBlock(first, Arrays.copyOf(block.counts(), block.count())));
    }
  }

  /** A reduced reading. */
  void reading(long tick, ProbeMessage.Reading message) {
    if (message.conversionLost() || !anchor(tick, 0, PER_READING)) {
      return;
    }
    long first = SamplePlan.indexAt(micros(tick));
    if (Math.floorMod(first, (long) PER_READING) != 0 || !admit(first, PER_READING)) {
      return;
    }
    int[] sums = new int[8];
    int[] lowest = new int[8];
    int[] highest = new int[8];
    long[] squares = new long[8];
    List<ChannelSum> channels = message.channels();
    for (int k = 0; k < 8; k++) {
      ChannelSum channel = channels.get(k);
      sums[k] = channel.sumCounts();
      lowest[k] = channel.lowestCounts();
      highest[k] = channel.highestCounts();
      squares[k] = channel.sumOfSquaresCounts2();
    }
    sink.accept(new Reading(first, sums, lowest, highest, squares));
  }

  private boolean admit(long first, int length) {
    if (nextIndex >= 0 && first < nextIndex) {
      return false; // Repeated or out of order: it was counted when it was missed or came the first
      // time.
    }
    if (nextIndex >= 0 && first > nextIndex) {
      lost += first - nextIndex;
      gaps++;
      sink.accept(new ProbeEvent.Gap(SamplePlan.microsOf(nextIndex), nextIndex, first - nextIndex));
    }
    received += length;
    nextIndex = first + length;
    return true;
  }

  /** End of a look. */
  void look(long tick, ProbeMessage.LookResult message) {
    long micros = micros(tick);
    Look look =
        new Look(
            Look.Result.ofWire(message.outcome().code()),
            message.closes(),
            micros - message.durationMillis() * 1000L,
            micros,
            new Zero(
                message.zeroISixteenths(), message.zeroJSixteenths(), message.zeroVSixteenths()),
            message.pairs(),
            message.endVSixteenths(),
            message.endJSixteenths(),
            message.sumVCounts(),
            message.sumJCounts());
    sink.accept(new ProbeEvent.Looked(micros, look));
  }

  /** A trip; the probe repeats it, it is passed on once. */
  void trip(long tick, ProbeMessage.Trip message) {
    if (message.number() == lastTripNumber) {
      return;
    }
    lastTripNumber = message.number();
    long opened = micros(tick);
    Trip trip =
        new Trip(
            message.number(),
            TripCause.ofWire(message.cause().code()),
            message.channel() == ProbeMessage.Trip.NO_CHANNEL ? -1 : message.channel(),
            message.confirmed(),
            micros(message.crossedTickMicros()),
            micros(message.decidedTickMicros()),
            opened,
            message.value(),
            message.limit(),
            message.i2tCounts2(),
            message.i2tLimitCounts2(),
            message.limitedConversions(),
            message.lastVCounts());
    captures.begin(trip);
    sink.accept(new ProbeEvent.Tripped(opened, trip));
  }

  /** A trip that was latched before this power-up: it is not ours. */
  public void ignoreTrip(int number) {
    lastTripNumber = number;
  }

  /** Sixteen conversions of a capture; passed on once, when all have come. */
  void capture(ProbeMessage.Capture message) {
    Capture whole = captures.add(message);
    if (whole != null) {
      sink.accept(new ProbeEvent.Captured(lastMicros, whole));
    }
  }

  /** Whether blocks of the latest trip's capture are still missing. */
  public boolean captureIncomplete() {
    return captures.incomplete();
  }

  /** The switch changed. */
  void switchChanged(long tick, ProbeMessage.SwitchChanged message) {
    sink.accept(
        new ProbeEvent.SwitchChanged(
            micros(tick), WireTerms.state(message.state()), WireTerms.cause(message.by())));
  }

  /** Button or pedal. */
  void press(long tick, ProbeMessage.Press message) {
    long micros = micros(tick);
    if (message.source() == PressSource.BUTTON) {
      if (message.kind() == PressKind.DOWN) {
        sink.accept(new ProbeEvent.Pressed(micros, ProbeEvent.Press.BUTTON));
      }
      return;
    }
    if (message.kind() != PressKind.DOWN) {
      sink.accept(
          new ProbeEvent.Pressed(
              micros,
              message.kind() == PressKind.HELD
                  ? ProbeEvent.Press.PEDAL_HELD
                  : ProbeEvent.Press.PEDAL_TAP));
    }
  }

  /** Inputs and self-test of a status: passed on when they change. */
  void condition(long tick, int newInputBits, int newSelfTestBits) {
    long micros = micros(tick);
    boolean first = inputBits < 0;
    if (newInputBits != inputBits || newSelfTestBits != selfTestBits) {
      inputBits = newInputBits;
      selfTestBits = newSelfTestBits;
      if (!first) {
        sink.accept(new ProbeEvent.ProbeCondition(micros, newInputBits, newSelfTestBits));
      }
    }
  }
}
