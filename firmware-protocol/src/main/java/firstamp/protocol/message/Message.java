package firstamp.protocol.message;

import firstamp.protocol.codes.MessageType;

/**
 * What a frame says: from the probe ({@link ProbeMessage}) or from the host ({@link HostMessage}).
 */
public sealed interface Message permits ProbeMessage, HostMessage {
  /** Its number on the wire. */
  MessageType type();
}
