package firstamp.protocol.frame;

import firstamp.protocol.values.Check;

/**
 * How much a decoder takes before it gives a frame up.
 *
 * @param frameBytes longest frame before COBS, checksum included
 * @param encodedBytes longest frame on the line, delimiter not included
 */
public record FrameLimits(int frameBytes, int encodedBytes) {
  /** The limits of the wire format. */
  public static final FrameLimits STANDARD = new FrameLimits(254, 255);

  static final int HEADER_BYTES = 8;
  static final int CRC_BYTES = 2;
  static final int SHORTEST_FRAME_BYTES = HEADER_BYTES + CRC_BYTES;

  public FrameLimits {
    Check.range(1, "frameBytes", frameBytes, SHORTEST_FRAME_BYTES, 254);
    Check.range(2, "encodedBytes", encodedBytes, frameBytes + 1L, 255);
  }
}
