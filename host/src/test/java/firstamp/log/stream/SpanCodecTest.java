package firstamp.log.stream;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import firstamp.log.code.MalformedChunkException;
import firstamp.log.code.SeriesCoder;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class SpanCodecTest {
  private static final int BUCKETS = 700;

  /** Two channels move, one is missing here and there, the rest has nothing at all. */
  private static Spans spans() {
    SplittableRandom random = new SplittableRandom(4);
    Spans spans = new Spans(1600, 12, BUCKETS);
    for (int b = 0; b < BUCKETS; b++) {
      int swing = random.nextInt(400);
      spans.add(0, b, 512 - swing, 511 + swing, 400L * 512 + random.nextInt(-300, 300), 400);
      if (b % 7 != 3) {
        spans.add(6, b, 3, 3, 3 * 50, 50);
      }
      spans.add(7, b, 0, 1023, random.nextInt(1023 * 50), 50);
    }
    return spans;
  }

  @Test
  void everyVersionGivesTheSameBuckets() throws MalformedChunkException {
    Spans spans = spans();
    for (int version : new int[] {SpanCodec.PLAIN, SpanCodec.CODED, SpanCodec.FROM_MEAN}) {
      SeriesCoder.Coded coded = SpanCodec.pack(spans, version);
      assertThat(coded.version()).isEqualTo(version);
      Spans again = SpanCodec.unpack(1600, 12, BUCKETS, version, coded.data());
      for (int channel = 0; channel < spans.lowest.length; channel++) {
        for (int b = 0; b < BUCKETS; b++) {
          boolean empty = spans.counts[channel][b] == 0;
          assertThat(again.counts[channel][b] == 0).isEqualTo(empty);
          if (!empty) {
            assertThat(again.lowest[channel][b]).isEqualTo(spans.lowest[channel][b]);
            assertThat(again.highest[channel][b]).isEqualTo(spans.highest[channel][b]);
            assertThat(again.sums[channel][b]).isEqualTo(spans.mean16(channel, b));
          }
        }
      }
    }
  }

  @Test
  void rowFromTheMeanIsTheShortestForNoiseOnLevels() {
    SplittableRandom random = new SplittableRandom(5);
    Spans spans = new Spans(1600, 0, BUCKETS);
    for (int channel = 0; channel < spans.lowest.length; channel++) {
      for (int b = 0; b < BUCKETS; b++) {
        for (int k = 0; k < 50; k++) {
          int count = (int) Math.round(500.3 + channel + 0.7 * random.nextGaussian());
          spans.add(channel, b, count, count, count, 1);
        }
      }
    }
    assertThat(SpanCodec.pack(spans, SpanCodec.FROM_MEAN).data().length)
        .isLessThan(SpanCodec.pack(spans, SpanCodec.CODED).data().length * 9 / 10);
  }

  @Test
  void refusesAVersionItDoesNotKnowAndARowThatEndsEarly() {
    byte[] data = SpanCodec.pack(spans(), SpanCodec.FROM_MEAN).data();
    assertThatThrownBy(() -> SpanCodec.unpack(1600, 12, BUCKETS, 18, data))
        .isInstanceOf(MalformedChunkException.class)
        .hasMessageContaining("version 18");
    byte[] part = java.util.Arrays.copyOf(data, data.length / 2);
    assertThatThrownBy(() -> SpanCodec.unpack(1600, 12, BUCKETS, SpanCodec.FROM_MEAN, part))
        .isInstanceOf(MalformedChunkException.class);
  }
}
