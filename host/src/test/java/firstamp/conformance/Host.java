package firstamp.conformance;

import firstamp.model.ProbePort;
import firstamp.model.samples.Reading;
import firstamp.model.samples.ReadingReducer;
import firstamp.model.samples.SamplePlan;
import firstamp.protocol.codes.LineSpeed;
import firstamp.protocol.codes.MessageType;
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
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/** The least host: one thread, everything kept, on any line. */
final class Host implements FrameDecoder.Sink {
  private static final long BEAT_NANOS = 100_000_000L;

  final List<Frame> frames = new ArrayList<>();
  final List<Reading> reducedHere = new ArrayList<>();
  int rejected;
  int lostFrames;
  long conversions;
  long conversionsMissing;
  private final ProbePort port;
  private final FrameEncoder encoder = new FrameEncoder();
  private final FrameDecoder decoder = new FrameDecoder(this);
  private final ReadingReducer reducer = new ReadingReducer(reducedHere::add);
  private final byte[] buffer = new byte[4096];
  private final ProbeClock clock = new ProbeClock();
  private long beatNanos;
  private long next = -1;
  private boolean beating = true;

  Host(ProbePort port) {
    this.port = port;
  }

  @Override
  public void frame(Frame frame) {
    frames.add(frame);
    if (ProbeClock.tells(frame.message())) {
      clock.tick(frame.tickMicros());
    }
  }

  @Override
  public void raw(RawBlock block) {
    clock.tick(block.tickMicros());
    long first = SamplePlan.indexAt(block.tickMicros());
    conversionsMissing += next < 0 ? 0 : Math.abs(first - next);
    next = first + block.count();
    conversions += block.count();
    reducer.accept(first, block.counts().clone(), 0, block.count());
  }

  @Override
  public void rejected(Rejected what) {
    rejected++;
  }

  @Override
  public void framesLost(int count) {
    lostFrames += count;
  }

  void fallSilent() {
    beating = false;
  }

  /** Asks who is there as a host of another version does. */
  void helloOfVersion(int version) throws IOException {
    port.write(encoder.encodeHello(version, LineSpeed.FAST));
  }

  /** Sends a command as a host of another version would, whatever comes of it. */
  void sendAs(int version, HostMessage message) throws IOException {
    port.write(ForeignFrames.of(version, encoder.encode(message)));
  }

  int send(HostMessage message) throws IOException {
    int sequence = encoder.nextSequence();
    port.write(encoder.encode(message));
    return sequence;
  }

  /** Sends and waits for the answer: null = accepted. */
  ProbeMessage.Refused ask(HostMessage message) throws IOException {
    return answer(message.type(), send(message));
  }

  /** The same with a payload as it is, right or wrong. */
  ProbeMessage.Refused askUnchecked(MessageType type, byte[] payload) throws IOException {
    int sequence = encoder.nextSequence();
    port.write(encoder.encodeUnchecked(type.code(), 0, payload));
    return answer(type, sequence);
  }

  private ProbeMessage.Refused answer(MessageType type, int sequence) throws IOException {
    boolean[] accepted = new boolean[1];
    ProbeMessage.Refused[] refused = new ProbeMessage.Refused[1];
    int from = frames.size();
    until(
        () -> {
          for (Frame frame : frames.subList(from, frames.size())) {
            if (frame.message() instanceof ProbeMessage.Accepted a
                && a.command() == type
                && a.commandSequence() == sequence) {
              accepted[0] = true;
            } else if (frame.message() instanceof ProbeMessage.Refused r
                && r.command() == type
                && r.commandSequence() == sequence) {
              refused[0] = r;
            }
          }
          return accepted[0] || refused[0] != null;
        },
        2,
        "answer to " + type);
    return refused[0];
  }

  void step() throws IOException {
    long now = port.time().monotonicNanos();
    if (beating && now >= beatNanos) {
      send(new HostMessage.Heartbeat());
      beatNanos = now + BEAT_NANOS;
    }
    int length = port.read(buffer, 10);
    decoder.push(buffer, 0, length);
    clock.computer(port.time().monotonicNanos());
  }

  /** In the probe's time. */
  void runFor(double seconds) throws IOException {
    long end = clock.nanos() + Math.round(seconds * 1e9);
    while (clock.nanos() < end) {
      step();
    }
  }

  /** In the probe's time. */
  void until(BooleanSupplier done, double longestS, String what) throws IOException {
    long end = clock.nanos() + Math.round(longestS * 1e9);
    while (!done.getAsBoolean()) {
      if (clock.nanos() > end) {
        throw new AssertionError("no " + what + " within " + longestS + " s; last " + lastOf(6));
      }
      step();
    }
  }

  private List<ProbeMessage> lastOf(int count) {
    List<ProbeMessage> all =
        frames.stream()
            .map(Frame::message)
            .filter(ProbeMessage.class::isInstance)
            .map(ProbeMessage.class::cast)
            .filter(m -> !(m instanceof ProbeMessage.Reading || m instanceof ProbeMessage.Capture))
            .toList();
    return all.subList(Math.max(0, all.size() - count), all.size());
  }

  ProbeMessage.Hello hello() throws IOException {
    return hello(LineSpeed.FAST);
  }

  /** The probe keeps this speed from its answer on; a pseudo-terminal carries any. */
  ProbeMessage.Hello hello(LineSpeed speed) throws IOException {
    int before = all(ProbeMessage.Hello.class).size();
    for (int tries = 0; tries < 20 && all(ProbeMessage.Hello.class).size() == before; tries++) {
      send(new HostMessage.HelloRequest(speed));
      runFor(0.25);
    }
    return last(ProbeMessage.Hello.class).orElseThrow();
  }

  /** Hello, stream, then whatever the scenario does. */
  void open(StreamKind kind) throws IOException {
    hello();
    ProbeMessage.Refused refused = ask(new HostMessage.StreamRequest(kind));
    if (refused != null) {
      throw new AssertionError("stream refused: " + refused);
    }
  }

  void awaitState(ProbeState state, double longestS) throws IOException {
    until(() -> state() == state, longestS, "state " + state);
  }

  ProbeState state() {
    return last(ProbeMessage.SwitchChanged.class)
        .map(ProbeMessage.SwitchChanged::state)
        .orElse(ProbeState.OFF);
  }

  <T extends ProbeMessage> List<T> all(Class<T> kind) {
    return frames.stream().map(Frame::message).filter(kind::isInstance).map(kind::cast).toList();
  }

  <T extends ProbeMessage> Optional<T> last(Class<T> kind) {
    List<T> all = all(kind);
    return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1));
  }

  /** Tick at which a state began, the last time. */
  long tickOf(ProbeState state) {
    return frames.stream()
        .filter(f -> f.message() instanceof ProbeMessage.SwitchChanged c && c.state() == state)
        .reduce((a, b) -> b)
        .orElseThrow()
        .tickMicros();
  }

  /** Tick of the last message of a kind. */
  long tickOf(Class<? extends ProbeMessage> kind) {
    return frames.stream()
        .filter(f -> kind.isInstance(f.message()))
        .reduce((a, b) -> b)
        .orElseThrow()
        .tickMicros();
  }

  /** V counts per J count for the nominal build: 330 ohm = 2.2, times 256. */
  static LookParameters look(boolean skip) {
    double perOhm = 0.4 / 60 * 256;
    double vCount = 60.0 / 1024;
    return new LookParameters(
        skip,
        3000,
        (int) Math.round(330 * perOhm),
        (int) Math.round(3 * perOhm),
        (int) Math.round(30 * perOhm),
        (int) Math.round(0.3 * 12 / vCount),
        (int) Math.round(1.15 * 12 / vCount));
  }
}
