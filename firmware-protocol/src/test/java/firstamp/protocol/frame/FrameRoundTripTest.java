package firstamp.protocol.frame;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.protocol.codes.TripCause;
import firstamp.protocol.message.Message;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.SlotPlan;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

final class FrameRoundTripTest {
  @Test
  void givesBackWhatWasEncoded() {
    List<Frame> frames = new ArrayList<>();
    FrameDecoder decoder = new FrameDecoder(frames::add);
    FrameEncoder encoder = new FrameEncoder(7);
    Message trip =
        new ProbeMessage.Trip(
            3, TripCause.RUNNING, SlotPlan.I, 3, 4_294_967_000L, 204, 120, 86, 5000, 0, 9, 17, 204);
    Message raw = new ProbeMessage.Raw(31, 2, new short[] {0, 1023, 512, 1, 2, 3, 1022});
    for (Message message : List.of(trip, raw)) {
      byte[] line = encoder.encode(message, 1_000_000);
      decoder.push(line, 0, line.length);
    }
    assertThat(frames).containsExactly(new Frame(7, 1_000_000, trip), new Frame(8, 1_000_000, raw));
  }
}
