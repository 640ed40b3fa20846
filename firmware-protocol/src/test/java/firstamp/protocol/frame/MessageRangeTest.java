package firstamp.protocol.frame;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import firstamp.protocol.codes.SelfTestFault;
import firstamp.protocol.codes.SwitchCause;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.ChannelScale;
import firstamp.protocol.values.LookParameters;
import firstamp.protocol.values.SelfTest;
import firstamp.protocol.values.SlotPlan;
import firstamp.protocol.values.TripLimits;
import java.util.Collections;
import org.junit.jupiter.api.Test;

final class MessageRangeTest {
  @Test
  void aLimitThatIsTooFineSaysWhatIsAllowed() {
    assertThatThrownBy(() -> TripLimits.builder().running(3, 0).build())
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("runningICounts is 3; expected 0 (not watched) or 4 to 1020");
  }

  @Test
  void aValueOutOfRangeSaysWhatIsAllowed() {
    assertThatThrownBy(() -> new LookParameters(false, 3001, 1, 1, 1, 0, 0))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("longestMillis is 3001; expected 100 to 3000");
    assertThatThrownBy(() -> new HostMessage.SwitchOff(SwitchCause.BUTTON))
        .hasMessage("by is 5; expected 1 to 4");
    assertThatThrownBy(() -> new ProbeMessage.Reading(0, false, Collections.emptyList()))
        .hasMessage("channels holds 0 values; expected 8");
  }

  @Test
  void thePlanHoldsTheContractsSlotsAndShares() {
    String names = "IJVABCHM";
    StringBuilder plan = new StringBuilder();
    for (int slot = 0; slot < SlotPlan.SLOTS; slot++) {
      plan.append(names.charAt(SlotPlan.channelAt(slot)));
    }
    assertThat(plan.toString()).isEqualTo("IHMVIHMAIHMBIHMCIHMJIHMAIHMBIHMC");
    int[] shares = {40, 5, 5, 10, 10, 10, 40, 40};
    for (int channel = 0; channel < SlotPlan.CHANNELS; channel++) {
      assertThat(SlotPlan.conversionsPerReading(channel)).isEqualTo(shares[channel]);
    }
  }

  @Test
  void scalesTurnCountsToBaseUnitsAndBack() {
    ChannelScale rail = ChannelScale.nominal().get(SlotPlan.R1);
    assertThat(rail.valueAt(512)).isZero();
    assertThat(rail.valueAt(0)).isEqualTo(-20_000_000.0);
    assertThat(rail.valuePerCount()).isEqualTo(39_062.5);
    assertThat(rail.countsAt(8_210_000)).isEqualTo(722);
    assertThat(rail.countsAt(25_000_000)).isEqualTo(1023);
    assertThat(rail.countsAt(-25_000_000)).isZero();
    assertThat(ChannelScale.nominal().get(SlotPlan.I).countsAt(1_000_000)).isEqualTo(102);
    assertThat(ChannelScale.nominal().get(SlotPlan.V).countsAt(0)).isEqualTo(10);
  }

  @Test
  void onlyAStartByTheWatchdogStillArms() {
    assertThat(new SelfTest(1 << 8).refusesArming()).isFalse();
    assertThat(new SelfTest(1 << 8 | 1 << 4).refusesArming()).isTrue();
    assertThat(new SelfTest(1 << 15).refusesArming()).isTrue();
    assertThat(new SelfTest(1 << 10 | 1).faults())
        .containsExactly(SelfTestFault.REFERENCE, SelfTestFault.CONVERTER);
  }
}
