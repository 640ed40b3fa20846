package firstamp.model;

import java.io.IOException;

/**
 * A line to a probe that carries bytes both ways: a serial port, or the emulated probe.
 *
 * <p>One thread reads; writing and closing may come from others.
 */
public interface ProbePort extends AutoCloseable {
  /**
   * Waits for bytes.
   *
   * @param buffer takes them, from index 0 @param timeoutMillis longest wait
   * @return how many came, 0 = none in that time
   * @throws IOException the line is gone; nothing more will come
   */
  int read(byte[] buffer, int timeoutMillis) throws IOException;

  /**
   * Hands bytes over to be sent, without waiting for the line.
   *
   * @throws IOException the line is gone or its queue is full
   */
  void write(byte[] bytes) throws IOException;

  /**
   * The clock by which the far end lives: the computer's for a real line, its own for the emulated
   * probe.
   */
  TimeSource time();

  /**
   * Whether what is behind an emulated probe is over (a waveform file at its end). Never on a real
   * line.
   */
  default boolean inputEnded() {
    return false;
  }

  /** What this is, in words for messages and the log. */
  String describe();

  /** Ends it; a second call does nothing. Does not throw. */
  @Override
  void close();
}
