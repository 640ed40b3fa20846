package firstamp.run.talk;

import firstamp.model.ProbePort;
import firstamp.protocol.codes.LineSpeed;
import firstamp.protocol.codes.MessageType;
import firstamp.protocol.frame.Frame;
import firstamp.protocol.frame.FrameDecoder;
import firstamp.protocol.frame.FrameEncoder;
import firstamp.protocol.frame.RawBlock;
import firstamp.protocol.frame.ReceiveCounts;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.message.ProbeMessageVisitor;
import java.io.IOException;

/**
 * Talks to one probe over one line: decodes what comes, sends commands again until they are
 * answered, keeps the heart beating.
 *
 * <p>Not thread-safe: belongs to the session thread.
 */
public final class Conversation implements FrameDecoder.Sink {
  /** Takes what concerns the course of the run; the stream itself goes to the translator. */
  public interface Listener {
    /** The probe says who it is. */
    void hello(ProbeMessage.Hello hello);

    /** The probe's state of health. */
    void status(ProbeMessage.Status status);

    /** The probe's clock has restarted and no hello came: the hello was lost on the line. */
    default void restartUnsaid() {}

    /** Button or pedal, as soon as it is reported. */
    default void press(ProbeMessage.Press press) {}

    /** What the probe keeps of its calibration. */
    default void calibration(ProbeMessage.Calibration calibration) {}
  }

  private static final int BUFFER_BYTES = 16_384;
  private static final long HEARTBEAT_NANOS = 100_000_000L;
  private static final long ANSWER_NANOS = 400_000_000L;
  private static final int TRIES = 6;

  private final FrameTranslator translator;
  private final ClockFit clock;
  private final Listener listener;
  private final FrameEncoder encoder = new FrameEncoder();
  private final byte[] buffer = new byte[BUFFER_BYTES];
  private final StatusTicks statusTicks = new StatusTicks();
  private FrameDecoder decoder = new FrameDecoder(this);
  private ProbePort port;
  private long lastSentNanos;
  private long lastByteNanos;
  private long nowNanos;
  private HostMessage pending;
  private int firstSequence;
  private int lastSequence;
  private int tries;
  private long askedNanos;
  private Answer answer = Answer.NONE;
  private ProbeMessage.Refused refusal;

  /** State of the command in progress. */
  public enum Answer {
    NONE,
    WAITING,
    ACCEPTED,
    REFUSED,
    SILENT
  }

  public Conversation(
      ProbePort port, FrameTranslator translator, ClockFit clock, Listener listener) {
    this.port = port;
    this.translator = translator;
    this.clock = clock;
    this.listener = listener;
    nowNanos = port.time().monotonicNanos();
    lastByteNanos = nowNanos;
    lastSentNanos = nowNanos - HEARTBEAT_NANOS;
  }

  /** Continues over another line; what was asked before is forgotten. */
  public void over(ProbePort next) {
    port = next;
    decoder = new FrameDecoder(this);
    pending = null;
    answer = Answer.NONE;
    lastByteNanos = next.time().monotonicNanos();
  }

  /** Waits for bytes and handles them. */
  public void poll(int timeoutMillis) throws IOException {
    int n = port.read(buffer, timeoutMillis);
    nowNanos = port.time().monotonicNanos();
    if (n > 0) {
      lastByteNanos = nowNanos;
      decoder.push(buffer, 0, n);
    }
  }

  /** Sends heartbeats and repeats an unanswered command. */
  public void keepUp() throws IOException {
    nowNanos = port.time().monotonicNanos();
    if (answer == Answer.WAITING && nowNanos - askedNanos >= ANSWER_NANOS) {
      if (tries >= TRIES) {
        answer = Answer.SILENT;
        pending = null;
      } else {
        transmitPending();
      }
    }
    if (nowNanos - lastSentNanos >= HEARTBEAT_NANOS) {
      send(new HostMessage.Heartbeat());
    }
  }

  /** Sends a command whose answer is of interest; one at a time. */
  public void ask(HostMessage message) throws IOException {
    pending = message;
    tries = 0;
    firstSequence = encoder.nextSequence();
    answer = Answer.WAITING;
    refusal = null;
    transmitPending();
  }

  private void transmitPending() throws IOException {
    tries++;
    lastSequence = encoder.nextSequence();
    askedNanos = port.time().monotonicNanos();
    send(pending);
  }

  /** Sends a message and does not wait for what comes back. */
  public void send(HostMessage message) throws IOException {
    port.write(encoder.encode(message));
    lastSentNanos = port.time().monotonicNanos();
  }

  /** Asks who is there as a host of another version of the wire format does. */
  public void sendHello(int version, LineSpeed speed) throws IOException {
    port.write(encoder.encodeHello(version, speed));
  }

  /** How the last {@link #ask} stands. */
  public Answer answer() {
    return answer;
  }

  /** Why it was refused. */
  public ProbeMessage.Refused refusal() {
    return refusal;
  }

  /** How long nothing has come, by the host's clock. */
  public long silentNanos() {
    return port.time().monotonicNanos() - lastByteNanos;
  }

  /** What the decoder has seen on this line. */
  public ReceiveCounts counts() {
    return decoder.counts();
  }

  public ProbePort port() {
    return port;
  }

  @Override
  public void raw(RawBlock block) {
    translator.raw(block);
    clock.add(translator.lastMicros(), nowNanos);
  }

  @Override
  public void frame(Frame frame) {
    if (frame.message() instanceof ProbeMessage message) {
      message.accept(new Dispatch(frame.tickMicros()));
    }
  }

  private boolean answersPending(MessageType command, int sequence) {
    int back = lastSequence - sequence & 0xFFFF;
    int length = lastSequence - firstSequence & 0xFFFF;
    return answer == Answer.WAITING
        && pending != null
        && pending.type() == command
        && back <= length;
  }

  /** One frame, by kind. */
  private final class Dispatch implements ProbeMessageVisitor<Void> {
    private final long tick;

    Dispatch(long tick) {
      this.tick = tick;
    }

    @Override
    public Void hello(ProbeMessage.Hello message) {
      statusTicks.beginAnew();
      listener.hello(message);
      return null;
    }

    @Override
    public Void raw(ProbeMessage.Raw message) {
      return null; // The decoder hands raw blocks over by its fast path.
    }

    @Override
    public Void reading(ProbeMessage.Reading message) {
      translator.reading(tick, message);
      clock.add(translator.lastMicros(), nowNanos);
      return null;
    }

    @Override
    public Void lookResult(ProbeMessage.LookResult message) {
      translator.look(tick, message);
      return null;
    }

    @Override
    public Void trip(ProbeMessage.Trip message) {
      translator.trip(tick, message);
      return null;
    }

    @Override
    public Void capture(ProbeMessage.Capture message) {
      translator.capture(message);
      return null;
    }

    @Override
    public Void status(ProbeMessage.Status message) {
      if (statusTicks.jumped(tick)) {
        listener.restartUnsaid();
        return null;
      }
      translator.condition(tick, message.inputs().bits(), message.selfTest().bits());
      listener.status(message);
      return null;
    }

    @Override
    public Void accepted(ProbeMessage.Accepted message) {
      if (answersPending(message.command(), message.commandSequence())) {
        answer = Answer.ACCEPTED;
        pending = null;
      }
      return null;
    }

    @Override
    public Void refused(ProbeMessage.Refused message) {
      if (answersPending(message.command(), message.commandSequence())) {
        answer = Answer.REFUSED;
        refusal = message;
        pending = null;
      }
      return null;
    }

    @Override
    public Void switchChanged(ProbeMessage.SwitchChanged message) {
      translator.switchChanged(tick, message);
      return null;
    }

    @Override
    public Void press(ProbeMessage.Press message) {
      translator.press(tick, message);
      listener.press(message);
      return null;
    }

    @Override
    public Void calibration(ProbeMessage.Calibration message) {
      listener.calibration(message);
      return null;
    }
  }
}
