package firstamp.emulate.line;

import firstamp.protocol.message.ProbeMessage;

/** Takes what the probe wants to send. */
public interface FrameOutput {
  /** A message; the tick is taken modulo 2^32. */
  void send(ProbeMessage message, long tickMicros);

  /** A raw block of the first {@code number} conversions. */
  void sendRaw(int firstSlot, int dropped, short[] counts, int number, long tickMicros);
}
