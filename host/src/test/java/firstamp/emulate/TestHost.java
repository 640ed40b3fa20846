package firstamp.emulate;

import firstamp.model.samples.Channel;
import firstamp.model.samples.SamplePlan;
import firstamp.protocol.codes.LineSpeed;
import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.codes.StreamKind;
import firstamp.protocol.frame.Frame;
import firstamp.protocol.frame.FrameDecoder;
import firstamp.protocol.frame.FrameEncoder;
import firstamp.protocol.frame.RawBlock;
import firstamp.protocol.frame.Rejected;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.LookParameters;
import firstamp.protocol.values.TripLimits;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The least host that can run the emulated probe: one thread, everything kept. */
public final class TestHost implements FrameDecoder.Sink {
  /** The numbers of wire-format.md section 4 for the nominal build and a 12 V set. */
  public static final LookParameters LOOK = look(12, false);

  public final EmulatedProbe probe;
  final List<Frame> frames = new ArrayList<>();
  public final List<Rejected> rejected = new ArrayList<>();
  final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
  public short[] counts = new short[1 << 20];
  public long firstConversion = -1;
  int conversions;
  int lostFrames;

  private final FrameEncoder encoder = new FrameEncoder();
  private final FrameDecoder decoder = new FrameDecoder(this);
  private final byte[] buffer = new byte[4096];
  private double nextBeatS;
  private boolean beating = true;

  public TestHost(EmulatedProbe probe) {
    this.probe = probe;
  }

  /** V counts per J count: (60 V / 1024) and (0.4 A / 1024): 330 ohm = 2.2, times 256. */
  static LookParameters look(double nominalV, boolean skip) {
    double vPerCount = 60.0 / 1024;
    double jPerCount = 0.4 / 1024;
    return new LookParameters(
        skip,
        3000,
        (int) Math.round(330 * jPerCount / vPerCount * 256),
        (int) Math.round(3 * jPerCount / vPerCount * 256),
        (int) Math.round(30 * jPerCount / vPerCount * 256),
        (int) Math.round(0.3 * nominalV / vPerCount),
        (int) Math.round(1.15 * nominalV / vPerCount));
  }

  public static TripLimits.Builder limits() {
    // 4.5 A for 60 ms, 1 A after it, 12.2 mA a count.
    return TripLimits.builder().inrush(60, 369).running(82, 0).overV(222);
  }

  @Override
  public void frame(Frame frame) {
    frames.add(frame);
  }

  @Override
  public void raw(RawBlock block) {
    long first = SamplePlan.indexAt(block.tickMicros());
    if (firstConversion < 0) {
      firstConversion = first;
    }
    int at = (int) (first - firstConversion);
    if (at + block.count() > counts.length) {
      counts = Arrays.copyOf(counts, 2 * counts.length);
    }
    System.arraycopy(block.counts(), 0, counts, at, block.count());
    conversions = at + block.count();
  }

  @Override
  public void rejected(Rejected what) {
    rejected.add(what);
  }

  @Override
  public void framesLost(int count) {
    lostFrames += count;
  }

  int send(HostMessage message) throws IOException {
    int sequence = encoder.nextSequence();
    probe.write(encoder.encode(message));
    return sequence;
  }

  void fallSilent() {
    beating = false;
  }

  double nowS() {
    return probe.time().monotonicNanos() / 1e9;
  }

  public void runUntil(double seconds) throws IOException {
    while (nowS() < seconds) {
      step();
    }
  }

  void runFor(double seconds) throws IOException {
    runUntil(nowS() + seconds);
  }

  private void step() throws IOException {
    if (beating && nowS() >= nextBeatS) {
      send(new HostMessage.Heartbeat());
      nextBeatS = nowS() + 0.1;
    }
    int length = probe.read(buffer, 20);
    bytes.write(buffer, 0, length);
    decoder.push(buffer, 0, length);
  }

  /** Runs until a state is reached, at most so long. */
  public void runUntil(ProbeState state, double longestS) throws IOException {
    double endS = nowS() + longestS;
    while (nowS() < endS
        && last(ProbeMessage.SwitchChanged.class).map(m -> m.state() != state).orElse(true)) {
      step();
    }
  }

  void open(StreamKind kind) throws IOException {
    send(new HostMessage.HelloRequest(LineSpeed.FAST));
    send(new HostMessage.StreamRequest(kind));
    runFor(0.05);
  }

  /** Hello, stream, limits, look, on. */
  public void switchOn(TripLimits limits, LookParameters look) throws IOException {
    open(StreamKind.RAW);
    send(new HostMessage.SetLimits(limits));
    send(new HostMessage.SwitchOn(look));
    runFor(0.2);
    runUntil(ProbeState.ON, 40);
  }

  public <T extends ProbeMessage> List<T> all(Class<T> kind) {
    return frames.stream().map(Frame::message).filter(kind::isInstance).map(kind::cast).toList();
  }

  public <T extends ProbeMessage> Optional<T> last(Class<T> kind) {
    List<T> all = all(kind);
    return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1));
  }

  /** Tick of the last message of a kind. */
  long lastTick(Class<? extends ProbeMessage> kind) {
    return frames.stream()
        .filter(f -> kind.isInstance(f.message()))
        .reduce((a, b) -> b)
        .orElseThrow()
        .tickMicros();
  }

  /** Tick at which a state began. */
  public long tickOf(ProbeState state) {
    return frames.stream()
        .filter(f -> f.message() instanceof ProbeMessage.SwitchChanged c && c.state() == state)
        .findFirst()
        .orElseThrow()
        .tickMicros();
  }

  /** Counts of one channel from a time on since the probe's start. */
  int[] of(Channel channel, double fromS, double untilS) {
    long from = Math.max(firstConversion, (long) Math.ceil(fromS * 16_000));
    long until = Math.min(firstConversion + conversions, (long) (untilS * 16_000));
    List<Integer> found = new ArrayList<>();
    for (long n = from; n < until; n++) {
      if (SamplePlan.channelAt(n) == channel) {
        found.add((int) counts[(int) (n - firstConversion)]);
      }
    }
    return found.stream().mapToInt(Integer::intValue).toArray();
  }

  double mean(Channel channel, double fromS, double untilS) {
    return Arrays.stream(of(channel, fromS, untilS)).average().orElseThrow();
  }
}
