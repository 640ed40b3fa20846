package firstamp.protocol.frame;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.protocol.codes.CalibrationState;
import firstamp.protocol.codes.MessageType;
import firstamp.protocol.codes.PedalDuty;
import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.codes.StreamKind;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.Message;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.ChannelScale;
import firstamp.protocol.values.Fuses;
import firstamp.protocol.values.Inputs;
import firstamp.protocol.values.SelfTest;
import firstamp.protocol.values.TripLimits;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

final class FrameDecoderTest {
  private final Recorder recorder = new Recorder();
  private final FrameDecoder decoder = new FrameDecoder(recorder);

  @Test
  void aMillionRandomBytesAreSurvivedAndCounted() {
    Random random = new Random(2026);
    byte[] bytes = new byte[1000];
    for (int block = 0; block < 1000; block++) {
      random.nextBytes(bytes);
      decoder.push(bytes, 0, bytes.length);
    }

    ReceiveCounts counts = decoder.counts();
    assertThat(counts.bytes()).isEqualTo(1_000_000);
    assertThat(counts.allRejected()).isGreaterThan(2000).isEqualTo(recorder.rejects.size());
    assertThat(counts.frames()).isEqualTo(recorder.frames.size());
  }

  @Test
  void damagedFramesAreSurvivedAndTheSoundOnesBetweenAreKept() {
    Random random = new Random(3);
    FrameEncoder encoder = new FrameEncoder();
    int sound = 0;
    for (Vectors.Vector vector : Vectors.messages()) {
      for (int round = 0; round < 200; round++) {
        byte[] damaged = vector.lineBytes();
        damaged[random.nextInt(damaged.length - 1)] ^= (byte) (1 << random.nextInt(8));
        decoder.push(damaged, 0, damaged.length);
        byte[] heartbeat = encoder.encode(new HostMessage.Heartbeat());
        decoder.push(heartbeat, 0, heartbeat.length);
        sound++;
      }
    }

    // Every single flipped bit is caught: nothing but the heartbeats decodes.
    assertThat(recorder.frames).hasSize(sound);
    assertThat(recorder.frames).allMatch(frame -> frame.type() == MessageType.HEARTBEAT);
  }

  @Test
  void ignoresEmptyFrames() {
    decoder.push(new byte[50], 0, 50);

    assertThat(decoder.counts().allRejected()).isZero();
    assertThat(decoder.counts().bytes()).isEqualTo(50);
  }

  @Test
  void reportsAnEndlessFrameOnceAndBeforeItsDelimiter() {
    byte[] noise = new byte[4000];
    Arrays.fill(noise, (byte) 0x55);
    decoder.push(noise, 0, 255);
    assertThat(recorder.rejects).isEmpty();
    decoder.push(noise, 0, 1);
    decoder.push(noise, 0, noise.length);

    assertThat(recorder.rejects)
        .extracting(Rejected::reason)
        .containsExactly(RejectReason.TOO_LONG);
  }

  @Test
  void smallerLimitsRefuseLongerFrames() {
    FrameDecoder small = new FrameDecoder(recorder, new FrameLimits(20, 21));
    byte[] limits =
        new FrameEncoder().encode(new HostMessage.SetLimits(TripLimits.builder().build()));
    small.push(limits, 0, limits.length);
    push(new FrameEncoder(), new HostMessage.Heartbeat());

    assertThat(recorder.rejects)
        .extracting(Rejected::reason)
        .containsExactly(RejectReason.TOO_LONG);
    assertThat(recorder.frames).hasSize(1);
  }

  @Test
  void countsFramesThatTheSequenceSaysAreMissing() {
    push(new FrameEncoder(65_534), new HostMessage.Heartbeat());
    push(new FrameEncoder(1), new HostMessage.Heartbeat());
    push(new FrameEncoder(2), new HostMessage.Heartbeat());

    assertThat(recorder.losses).containsExactly(2);
    assertThat(decoder.counts().lostFrames()).isEqualTo(2);
    assertThat(decoder.counts().backwardJumps()).isZero();
  }

  @Test
  void aRepeatedFrameIsABackwardJumpAndNoLoss() {
    push(new FrameEncoder(9), new HostMessage.Heartbeat());
    push(new FrameEncoder(9), new HostMessage.Heartbeat());

    assertThat(recorder.losses).isEmpty();
    assertThat(decoder.counts().backwardJumps()).isEqualTo(1);
  }

  @Test
  void aJumpOfHalfTheRangeOrMoreIsBackward() {
    push(new FrameEncoder(40_000), new HostMessage.Heartbeat());
    push(new FrameEncoder(7_233), new HostMessage.Heartbeat());
    assertThat(decoder.counts().backwardJumps()).isEqualTo(1);
    push(new FrameEncoder(40_001), new HostMessage.Heartbeat());

    assertThat(decoder.counts().backwardJumps()).isEqualTo(1);
    assertThat(recorder.losses).containsExactly(32_767);
  }

  @Test
  void aHelloOfAnotherBootStartsTheSequenceAnew() {
    push(new FrameEncoder(100), hello(4));
    push(new FrameEncoder(0), hello(5));
    push(new FrameEncoder(3), hello(5));

    assertThat(recorder.losses).containsExactly(2);
    assertThat(decoder.counts().backwardJumps()).isZero();
  }

  @Test
  void handsRawBlocksOverWithoutAMessage() {
    short[] counts = {5, 1023, 0, 700, 3};
    short[] seen = new short[5];
    FrameDecoder.Sink sink =
        new FrameDecoder.Sink() {
          @Override
          public void frame(Frame frame) {
            throw new AssertionError("expected a raw block, got " + frame);
          }

          @Override
          public void raw(RawBlock block) {
            assertThat(block.count()).isEqualTo(5);
            assertThat(block.firstSlot()).isEqualTo(12);
            assertThat(block.dropped()).isEqualTo(65_535);
            assertThat(block.sequence()).isEqualTo(77);
            assertThat(block.tickMicros()).isEqualTo(4_294_967_295L);
            System.arraycopy(block.counts(), 0, seen, 0, 5);
          }
        };
    byte[] line = new byte[FrameEncoder.LONGEST_ON_LINE_BYTES];
    int length =
        new FrameEncoder(77).encodeRaw(12, 65_535, counts, 0, counts.length, 0xFFFF_FFFFL, line, 0);
    new FrameDecoder(sink).push(line, 0, length);

    assertThat(seen).containsExactly(counts);
  }

  @Test
  void staysUsableAfterASinkHasThrown() {
    FrameDecoder throwing =
        new FrameDecoder(
            frame -> {
              if (frame.sequence() == 0) {
                throw new IllegalStateException("sink");
              }
              recorder.frame(frame);
            });
    FrameEncoder encoder = new FrameEncoder();
    byte[] first = encoder.encode(new HostMessage.Heartbeat());
    byte[] second = encoder.encode(new HostMessage.Heartbeat());
    try {
      throwing.push(first, 0, 3);
      throwing.push(first, 3, first.length - 3);
    } catch (IllegalStateException expected) {
      assertThat(expected).hasMessage("sink");
    }
    throwing.push(second, 0, second.length);

    assertThat(recorder.frames).hasSize(1);
  }

  @Test
  void randomRawBlocksComeBackWhole() {
    Random random = new Random(17);
    FrameEncoder encoder = new FrameEncoder();
    for (int round = 0; round < 500; round++) {
      short[] counts = new short[1 + random.nextInt(128)];
      for (int i = 0; i < counts.length; i++) {
        counts[i] = (short) (random.nextInt(4) == 0 ? 0 : random.nextInt(1024));
      }
      ProbeMessage.Raw raw =
          new ProbeMessage.Raw(random.nextInt(32), random.nextInt(65_536), counts);
      long tick = random.nextLong() & 0xFFFF_FFFFL;
      byte[] line = encoder.encode(raw, tick);
      decoder.push(line, 0, line.length);
      assertThat(recorder.frames.get(round)).isEqualTo(new Frame(round, tick, raw));
    }
    assertThat(recorder.rejects).isEmpty();
  }

  private void push(FrameEncoder encoder, Message message) {
    byte[] line = encoder.encode(message, 0);
    decoder.push(line, 0, line.length);
  }

  private static ProbeMessage.Hello hello(long bootId) {
    return new ProbeMessage.Hello(
        256,
        bootId,
        1,
        ProbeState.OFF,
        new Inputs(Inputs.CHASSIS_CLIP_ON),
        StreamKind.NONE,
        SelfTest.PASSED,
        0,
        Optional.empty(),
        CalibrationState.BLANK,
        List.copyOf(ChannelScale.nominal()),
        0,
        10_000,
        330_000,
        2000,
        PedalDuty.OFF,
        Fuses.RIGHT);
  }
}
