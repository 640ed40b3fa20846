package firstamp.model.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class SamplePlanTest {
  @Test
  void holdsThePlanOfTheWireFormat() {
    StringBuilder plan = new StringBuilder();
    for (int slot = 0; slot < SamplePlan.SLOTS; slot++) {
      plan.append(SamplePlan.channelAt(slot)).append(' ');
    }
    assertThat(plan.toString())
        .isEqualTo("I H M V I H M R1 I H M R2 I H M R3 I H M J I H M R1 I H M R2 I H M R3 ");
  }

  @Test
  void convertsBetweenIndexAndTime() {
    assertThat(SamplePlan.microsOf(1)).isEqualTo(62);
    assertThat(SamplePlan.microsOf(2)).isEqualTo(125);
    for (long index = 0; index < 1000; index++) {
      assertThat(SamplePlan.indexAt(SamplePlan.microsOf(index))).isEqualTo(index);
    }
    assertThat(SamplePlan.indexAt(61)).isZero();
    assertThat(SamplePlan.indexAt(124)).isEqualTo(1);
  }

  @Test
  void reducesWholeReadingsOnlyAndSkipsTheOneWithAGap() {
    List<Reading> readings = new ArrayList<>();
    ReadingReducer reducer = new ReadingReducer(readings::add);
    short[] counts = new short[500];
    for (int k = 0; k < counts.length; k++) {
      counts[k] = (short) (k % 7);
    }
    reducer.accept(155, counts, 0, 170); // 155..324: the reading 160..319 is whole
    reducer.accept(330, counts, 0, 400); // 325..329 lost: 320..479 is not, 480..639 is
    assertThat(readings).extracting(Reading::firstIndex).containsExactly(160L, 480L);
    Reading first = readings.get(0);
    int sumV = 0;
    for (int index = 160; index < 320; index++) {
      if (index % 32 == 3) {
        sumV += (index - 155) % 7;
      }
    }
    assertThat(first.sum(Channel.V)).isEqualTo(sumV);
    assertThat(first.lowest(Channel.I)).isZero();
    assertThat(first.highest(Channel.I)).isEqualTo(6);
  }
}
