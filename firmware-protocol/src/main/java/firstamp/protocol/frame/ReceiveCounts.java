package firstamp.protocol.frame;

import java.util.Map;
import java.util.OptionalInt;

/**
 * What a decoder has seen since it was made.
 *
 * @param bytes all bytes pushed
 * @param frames frames that decoded
 * @param rejected frames dropped, under each reason that occurred
 * @param lostFrames frames that the jumps of the sequence say are missing, rejected ones among them
 * @param backwardJumps sequences that went back or stood still: a repeated frame, or a sender that
 *     started again
 * @param foreignVersion the last other protocol version, absent if none was seen
 */
public record ReceiveCounts(
    long bytes,
    long frames,
    Map<RejectReason, Long> rejected,
    long lostFrames,
    long backwardJumps,
    OptionalInt foreignVersion) {
  public ReceiveCounts {
    rejected = Map.copyOf(rejected);
  }

  /** How many frames were dropped for a reason. */
  public long rejected(RejectReason reason) {
    return rejected.getOrDefault(reason, 0L);
  }

  /** How many frames were dropped for any reason. */
  public long allRejected() {
    return rejected.values().stream().mapToLong(Long::longValue).sum();
  }
}
