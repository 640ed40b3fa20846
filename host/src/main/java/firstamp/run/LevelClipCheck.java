package firstamp.run;

import firstamp.model.Happening;
import firstamp.model.LevelClips;
import firstamp.model.ProbeEvent;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.values.Clips;
import java.io.IOException;

/**
 * Whether the clips of head and meter are joined: read back before switching on, and once more when
 * all is over, because a clip that fell off looks like a set that gives its head nothing. While the
 * switch is on the probe cannot read them.
 *
 * <p>Not thread-safe: belongs to the session thread.
 */
final class LevelClipCheck {
  /** The probe needs 14 ms; what it has read comes with its next status. */
  private static final long READ_NANOS = 150_000_000L;

  private final RunStream stream;
  private LevelClips told = LevelClips.JOINED;
  private long askedNanos;
  private boolean asked;

  LevelClipCheck(RunStream stream) {
    this.stream = stream;
  }

  /** Tells the chain what the probe has found, where that is not what it knows. */
  void tell() {
    Clips read = stream.clips();
    LevelClips found = new LevelClips(read.headJoined(), read.meterJoined());
    if (used() && !found.equals(told)) {
      told = found;
      stream.accept(new ProbeEvent.Happened(stream.now(), Happening.ClipsRead.of(found)));
    }
  }

  /** Reads them once more, with no stream that it could disturb; true when that is done. */
  boolean readAgain() throws IOException {
    boolean ran = stream.chain() != null && stream.chain().closedMicros() != null;
    if (!used() || !ran || stream.setup().observe() || !stream.clips().known()) {
      return true;
    }
    long now = stream.talk().port().time().monotonicNanos();
    if (!asked) {
      asked = true;
      askedNanos = now;
      stream.talk().send(new HostMessage.ReadClips());
    }
    if (now - askedNanos < READ_NANOS) {
      return false;
    }
    tell();
    return true;
  }

  private boolean used() {
    return stream.setup().effective().levels() != null;
  }
}
