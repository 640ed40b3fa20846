package firstamp.log.code;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.samples.SamplePlan;
import java.util.Random;
import org.junit.jupiter.api.Test;

final class DeinterleaverTest {
  private final Random random = new Random(7);

  @Test
  void everyConversionGoesToTheChannelOfItsSlotAndBack() {
    for (int length : new int[] {0, 1, 31, 32, 33, 3199, 3200, 3201, 10_000}) {
      for (int round = 0; round < 20; round++) {
        long firstIndex = random.nextInt(1000);
        int offset = random.nextInt(5);
        short[] counts = new short[offset + length];
        int[][] values = new int[Deinterleaver.CHANNELS][length];
        int[][] expected = new int[Deinterleaver.CHANNELS][length];
        int[] number = new int[Deinterleaver.CHANNELS];
        for (int k = 0; k < length; k++) {
          counts[offset + k] = (short) random.nextInt(1024);
          int channel = SamplePlan.channelAt(firstIndex + k).ordinal();
          expected[channel][number[channel]++] = counts[offset + k];
        }
        int[] sizes = new int[Deinterleaver.CHANNELS];
        Deinterleaver.split(counts, offset, firstIndex, length, values, sizes);
        assertThat(sizes).isEqualTo(number);
        assertThat(values).isDeepEqualTo(expected);
        short[] again = new short[offset + length];
        System.arraycopy(counts, 0, again, 0, offset);
        int[] taken = new int[Deinterleaver.CHANNELS];
        Deinterleaver.join(values, taken, firstIndex, again, offset, length);
        assertThat(again).isEqualTo(counts);
        assertThat(taken).isEqualTo(number);
      }
    }
  }
}
