package firstamp.run.talk;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.ProbeEvent;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import firstamp.pipeline.StreamSink;
import firstamp.protocol.codes.TripCause;
import firstamp.protocol.frame.Frame;
import firstamp.protocol.frame.FrameDecoder;
import firstamp.protocol.frame.FrameEncoder;
import firstamp.protocol.frame.RawBlock;
import firstamp.protocol.message.ProbeMessage;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class FrameTranslatorTest {
  private final List<Object> stream = new ArrayList<>();
  private final FrameTranslator translator = new FrameTranslator(new Sink());
  private final FrameEncoder encoder = new FrameEncoder();
  private final FrameDecoder decoder = new FrameDecoder(new Line());

  private void raw(long firstIndex, int count) {
    byte[] out = new byte[FrameEncoder.LONGEST_ON_LINE_BYTES];
    long tick = Math.floorDiv(firstIndex * 125, 2);
    int length =
        encoder.encodeRaw(
            (int) (firstIndex & 31), 0, new short[count], 0, count, tick & 0xFFFFFFFFL, out, 0);
    decoder.push(out, 0, length);
  }

  @Test
  void countsWhatCameAndNamesWhatDidNot() {
    raw(320, 128);
    raw(448, 128);
    raw(704, 128); // 576..703 never came
    raw(448, 128); // repeated: dropped
    assertThat(translator.received()).isEqualTo(3 * 128);
    assertThat(translator.lost()).isEqualTo(128);
    assertThat(translator.gaps()).isEqualTo(1);
    assertThat(stream).hasSize(4);
    assertThat(stream.get(2)).isEqualTo(new ProbeEvent.Gap(36_000, 576, 128));
  }

  @Test
  void goesOnAfterTheTickHasWrapped() {
    long before = (1L << 32) * 2 / 125 / 32 * 32; // the last plan that starts before 2^32 us
    raw(before - 96, 128);
    raw(before + 32, 128);
    assertThat(translator.lost()).isZero();
    assertThat(((ConversionBlock) stream.get(1)).firstIndex()).isEqualTo(before + 32);
    assertThat(translator.lastMicros()).isGreaterThan(1L << 32);
  }

  @Test
  void joinsAProbeThatHasRunForHours() {
    long index = 16_000L * 3600 * 5 / 32 * 32 + 32;
    raw(index, 128);
    assertThat(((ConversionBlock) stream.get(0)).firstIndex()).isEqualTo(index);
  }

  /** The probe tells a trip three times, at once and after 50 and 200 ms. */
  @Test
  void aTripToldAgainIsPassedOnOnce() {
    raw(320, 128);
    stream.clear();
    translator.trip(25_000, trip(3, 25_000));
    translator.trip(25_000, trip(3, 25_000));
    translator.trip(25_000, trip(3, 25_000));
    assertThat(stream).hasSize(1);
    assertThat(((ProbeEvent.Tripped) stream.get(0)).trip().number()).isEqualTo(3);
    translator.trip(90_000, trip(4, 90_000));
    assertThat(stream).hasSize(2);
  }

  private static ProbeMessage.Trip trip(int number, long tick) {
    return new ProbeMessage.Trip(
        number, TripCause.RUNNING, 0, 3, tick - 800, tick - 100, 90, 80, 0, 0, 1, 0, 200);
  }

  @Test
  void timeGoesOnWhenTheProbeWasRestarted() {
    raw(160_000, 128);
    translator.restarted(10_500_000);
    raw(64, 128);
    ConversionBlock after = (ConversionBlock) stream.get(2);
    assertThat(after.firstIndex()).isEqualTo(10_510_000L * 2 / 125 + 64);
    assertThat(stream.get(1)).isInstanceOf(ProbeEvent.Gap.class);
  }

  private final class Line implements FrameDecoder.Sink {
    @Override
    public void frame(Frame frame) {
      throw new AssertionError("raw blocks only");
    }

    @Override
    public void raw(RawBlock block) {
      translator.raw(block);
    }
  }

  private final class Sink implements StreamSink {
    @Override
    public void accept(ConversionBlock block) {
      stream.add(block);
    }

    @Override
    public void accept(Reading reading) {
      stream.add(reading);
    }

    @Override
    public void accept(ProbeEvent event) {
      stream.add(event);
    }
  }
}
