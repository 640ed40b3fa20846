package firstamp.supply;

import firstamp.model.ProbePort;
import firstamp.model.TimeSource;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;

/**
 * A line in memory with a responder at its end. Its clock is driven by waiting in vain: a second of
 * silence passes in a moment.
 */
public final class ResponderLine implements ProbePort {
  private final StrictResponder responder;
  private final BlockingQueue<byte[]> coming = new LinkedBlockingQueue<>();
  private final AtomicLong nanos = new AtomicLong();
  private final StringBuilder partial = new StringBuilder();
  private volatile boolean gone;
  private volatile boolean closed;

  /** A line to this responder. */
  public ResponderLine(StrictResponder responder) {
    this.responder = responder;
  }

  /** The plug is pulled. */
  public void pull() {
    gone = true;
  }

  /** Whether it was closed. */
  public boolean closed() {
    return closed;
  }

  @Override
  public int read(byte[] buffer, int timeoutMillis) throws IOException {
    if (gone) {
      throw new IOException("unplugged");
    }
    try {
      byte[] bytes = coming.poll(1, TimeUnit.MILLISECONDS);
      if (bytes == null) {
        nanos.addAndGet(timeoutMillis * 1_000_000L);
        return 0;
      }
      System.arraycopy(bytes, 0, buffer, 0, bytes.length);
      return bytes.length;
    } catch (InterruptedException stop) {
      Thread.currentThread().interrupt();
      return 0;
    }
  }

  @Override
  public synchronized void write(byte[] bytes) throws IOException {
    if (gone) {
      throw new IOException("unplugged");
    }
    partial.append(new String(bytes, StandardCharsets.US_ASCII));
    for (int end = partial.indexOf("\n"); end >= 0; end = partial.indexOf("\n")) {
      String line = partial.substring(0, end);
      partial.delete(0, end + 1);
      for (String answer : responder.line(line)) {
        // In two pieces: a line may come in any.
        byte[] whole = (answer + "\r\n").getBytes(StandardCharsets.US_ASCII);
        int half = whole.length / 2;
        coming.add(java.util.Arrays.copyOf(whole, half));
        coming.add(java.util.Arrays.copyOfRange(whole, half, whole.length));
      }
    }
  }

  @Override
  public TimeSource time() {
    return new TimeSource() {
      @Override
      public long epochMillis() {
        return nanos.get() / 1_000_000;
      }

      @Override
      public long monotonicNanos() {
        return nanos.get();
      }
    };
  }

  @Override
  public String describe() {
    return "line in memory";
  }

  @Override
  public void close() {
    closed = true;
  }
}
