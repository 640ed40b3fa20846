package firstamp.model.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ReadingReducerTest {
  private static final int PER_READING = SamplePlan.CONVERSIONS_PER_READING;

  @Test
  void reducesEachChannelAsDefinedHoweverTheStreamIsCut() {
    Random random = new Random(160);
    List<Reading> readings = new ArrayList<>();
    List<Reading> expected = new ArrayList<>();
    ReadingReducer reducer = new ReadingReducer(readings::add);
    short[] collected = new short[PER_READING];
    long index = -1000;
    long start = Long.MAX_VALUE;
    for (int round = 0; round < 20_000; round++) {
      if (random.nextInt(20) == 0) {
        int jump = 1 + random.nextInt(400);
        index += random.nextBoolean() ? jump : -jump;
        start = Long.MAX_VALUE;
      }
      short[] counts = new short[random.nextInt(600)];
      int offset = random.nextInt(counts.length + 1);
      int length = random.nextInt(counts.length - offset + 1);
      for (int k = 0; k < counts.length; k++) {
        counts[k] = (short) random.nextInt(1024);
      }
      reducer.accept(index, counts, offset, length);
      for (int k = 0; k < length; k++, index++) {
        int place = (int) Math.floorMod(index, (long) PER_READING);
        start = place == 0 ? index : start;
        collected[place] = counts[offset + k];
        if (place == PER_READING - 1 && start == index - place) {
          expected.add(defined(start, collected));
        }
      }
    }

    assertThat(readings).hasSizeGreaterThan(5000).isEqualTo(expected);
  }

  private static Reading defined(long firstIndex, short[] counts) {
    int[] sums = new int[8];
    int[] lowest = new int[8];
    int[] highest = new int[8];
    long[] squares = new long[8];
    Arrays.fill(lowest, Integer.MAX_VALUE);
    Arrays.fill(highest, Integer.MIN_VALUE);
    for (int k = 0; k < PER_READING; k++) {
      int channel = SamplePlan.channelAt(firstIndex + k).ordinal();
      sums[channel] += counts[k];
      squares[channel] += counts[k] * counts[k];
      lowest[channel] = Math.min(lowest[channel], counts[k]);
      highest[channel] = Math.max(highest[channel], counts[k]);
    }
    return new Reading(firstIndex, sums, lowest, highest, squares);
  }
}
