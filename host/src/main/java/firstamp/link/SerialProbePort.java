package firstamp.link;

import com.fazecast.jSerialComm.SerialPort;
import firstamp.model.ProbePort;
import firstamp.model.TimeSource;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;

/**
 * A serial port with a probe on it.
 *
 * <p>One thread reads as bytes come, one writes: a stalled device blocks a write without limit, and
 * heartbeats must not hold up what was read. A read result of -1 is the only sign that the port is
 * gone; the library's own flags stay as they were.
 */
public final class SerialProbePort implements ProbePort {

  /** Speed of the raw stream. */
  public static final int BAUD_RAW = 500_000;

  /** Speed of the reduced stream. */
  public static final int BAUD_REDUCED = 250_000;

  private static final int READ_TIMEOUT_MILLIS = 100;
  private static final int CHUNK_BYTES = 4096;
  private static final int QUEUED_CHUNKS = 1024;
  private static final int QUEUED_WRITES = 64;
  private static final long JOIN_MILLIS = 1000;
  private static final byte[] GONE = new byte[0];

  private final SerialPort port;
  private final PortLock lock;
  private final TimeSource time;
  private final BlockingQueue<byte[]> received = new ArrayBlockingQueue<>(QUEUED_CHUNKS);
  private final BlockingQueue<byte[]> toSend = new ArrayBlockingQueue<>(QUEUED_WRITES);
  private final AtomicBoolean closed = new AtomicBoolean();
  private final AtomicLong bytesDropped = new AtomicLong();
  private final Thread reader;
  private final Thread writer;
  private byte[] rest = GONE;
  private int restOffset;
  private volatile boolean gone;

  private SerialProbePort(SerialPort port, PortLock lock, TimeSource time) {
    this.port = port;
    this.lock = lock;
    this.time = time;
    this.reader = new Thread(this::readLoop, "serial-read");
    this.writer = new Thread(this::writeLoop, "serial-write");
    reader.setDaemon(true);
    writer.setDaemon(true);
  }

  /**
   * Opens a port.
   *
   * @param name path or name of the port
   * @param baud one of the two speeds of the wire format
   * @param lockFolder private folder for our lock files
   * @param time the computer's clock
   * @throws PortException absent, busy, not permitted or unusable
   */
  public static SerialProbePort open(String name, int baud, Path lockFolder, TimeSource time)
      throws PortException {
    PortAccess.check(name);
    PortLock lock = PortLock.take(lockFolder, PortAccess.canonical(name));
    boolean opened = false;
    try {
      SerialPort port = SerialPort.getCommPort(PortAccess.canonical(name));
      configure(port, name, baud);
      if (!port.openPort(0, 65_536, 65_536)) {
        throw openFailed(name, port.getLastErrorCode());
      }
      SerialProbePort open = new SerialProbePort(port, lock, time);
      open.reader.start();
      open.writer.start();
      opened = true;
      return open;
    } finally {
      if (!opened) {
        lock.close();
      }
    }
  }

  private static void configure(SerialPort port, String name, int baud) throws PortException {
    boolean set =
        port.setComPortParameters(baud, 8, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY)
            & port.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED)
            & port.setComPortTimeouts(
                SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_TIMEOUT_MILLIS, 0);
    if (!set) {
      throw new PortException(PortException.Kind.UNUSABLE, "speed", name, baud);
    }
  }

  private static PortException openFailed(String name, int errno) {
    return switch (errno) {
      case 13 -> new PortException(PortException.Kind.NOT_PERMITTED, "denied", name);
      case 2, 6, 19 -> new PortException(PortException.Kind.ABSENT, "absent", name);
      case 11, 16 -> new PortException(PortException.Kind.BUSY, "busy", name);
      // ENOTTY of POSIX: "inappropriate I/O control operation", no terminal.
      case 25 -> new PortException(PortException.Kind.UNUSABLE, "no-terminal", name);
      default -> new PortException(PortException.Kind.BUSY, "not-opened", name, errno);
    };
  }

  @Override
  public int read(byte[] buffer, int timeoutMillis) throws IOException {
    if (restOffset == rest.length) {
      rest = GONE;
      restOffset = 0;
      byte[] next = take(timeoutMillis);
      if (next == null) {
        if (gone && received.isEmpty()) {
          throw lineGone();
        }
        return 0;
      }
      if (next.length == 0) {
        throw lineGone();
      }
      rest = next;
    }
    int n = Math.min(buffer.length, rest.length - restOffset);
    System.arraycopy(rest, restOffset, buffer, 0, n);
    restOffset += n;
    return n;
  }

  private byte[] take(int timeoutMillis) {
    try {
      return timeoutMillis <= 0
          ? received.poll()
          : received.poll(timeoutMillis, TimeUnit.MILLISECONDS);
    } catch (InterruptedException stop) {
      Thread.currentThread().interrupt();
      return null;
    }
  }

  @Override
  public void write(byte[] bytes) throws IOException {
    if (gone || closed.get()) {
      throw lineGone();
    }
    if (!toSend.offer(bytes.clone())) {
      throw new PortException(PortException.Kind.GONE, "full", describe(), QUEUED_WRITES);
    }
  }

  private PortException lineGone() {
    return new PortException(PortException.Kind.GONE, "gone", describe());
  }

  private void readLoop() {
    byte[] buffer = new byte[CHUNK_BYTES];
    while (!closed.get()) {
      int n = port.readBytes(buffer, buffer.length);
      if (n < 0) {
        break;
      }
      if (n > 0 && !received.offer(Arrays.copyOf(buffer, n))) {
        // The consumer is over 4 MB behind. What is dropped shows as a gap in the sequence; nothing
        // is invented.
        bytesDropped.addAndGet(n);
      }
    }
    gone = true;
    received.offer(GONE);
  }

  private void writeLoop() {
    try {
      while (!closed.get() || !toSend.isEmpty()) {
        byte[] bytes = toSend.poll(200, TimeUnit.MILLISECONDS);
        if (bytes != null && port.writeBytes(bytes, bytes.length) < 0) {
          gone = true;
          received.offer(GONE);
          return;
        }
      }
    } catch (InterruptedException stop) {
      Thread.currentThread().interrupt();
    }
  }

  /** Bytes thrown away because the host did not take them in time. */
  public long bytesDropped() {
    return bytesDropped.get();
  }

  @Override
  public TimeSource time() {
    return time;
  }

  @Override
  public String describe() {
    return port.getSystemPortPath();
  }

  /**
   * Sends what was written before, waits for it at most a second, closes the port and frees the
   * lock.
   */
  @Override
  public void close() {
    if (!closed.compareAndSet(false, true)) {
      return;
    }
    try {
      writer.join(JOIN_MILLIS);
      port.closePort();
      reader.join(JOIN_MILLIS);
    } catch (InterruptedException stop) {
      Thread.currentThread().interrupt();
    } finally {
      writer.interrupt();
      lock.close();
    }
  }
}
