package firstamp.protocol.frame;

import firstamp.protocol.codes.MessageType;
import firstamp.protocol.codes.WireCode;
import firstamp.protocol.message.Message;

/**
 * One message with what its frame carried.
 *
 * @param sequence the sender's count of frames, 0 to 65535
 * @param tickMicros the probe's 32-bit microsecond tick, 0 to 4 294 967 295; the host sends 0
 * @param message what it says
 */
public record Frame(int sequence, long tickMicros, Message message) {
  /** The protocol version of every frame that decodes. */
  public static final int VERSION = WireCode.VERSION;

  /** Number of the message on the wire. */
  public MessageType type() {
    return message.type();
  }
}
