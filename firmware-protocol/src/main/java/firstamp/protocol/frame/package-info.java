/**
 * Messages to bytes and back: payloads, frames, checksum, byte stuffing, sequence and probe time.
 */
package firstamp.protocol.frame;
