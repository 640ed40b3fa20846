package firstamp.protocol.frame;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.protocol.values.SlotPlan;
import org.junit.jupiter.api.Test;

final class TickUnwrapperTest {
  private final TickUnwrapper unwrapper = new TickUnwrapper();

  @Test
  void goesOnOverTheWrap() {
    assertThat(unwrapper.unwrap(4_294_967_000L)).isEqualTo(4_294_967_000L);
    assertThat(unwrapper.unwrap(204)).isEqualTo(4_294_967_500L);
    assertThat(unwrapper.unwrap(2_000_000_000L)).isEqualTo(6_294_967_296L);
    assertThat(unwrapper.unwrap(4_000_000_000L)).isEqualTo(8_294_967_296L);
    assertThat(unwrapper.unwrap(0)).isEqualTo(8_589_934_592L);
  }

  @Test
  void anOlderEventMovesNothing() {
    unwrapper.unwrap(4_294_967_000L);
    unwrapper.unwrap(1000);
    assertThat(unwrapper.unwrap(4_294_967_200L)).isEqualTo(4_294_967_200L);
    assertThat(unwrapper.latestMicros()).isEqualTo(4_294_968_296L);
    assertThat(unwrapper.unwrap(1100)).isEqualTo(4_294_968_396L);
  }

  @Test
  void conversionsStartEverySixtyTwoAndAHalfMicroseconds() {
    long[] starts = {0, 62, 125, 187, 250, 312};
    for (int n = 0; n < starts.length; n++) {
      assertThat(TickUnwrapper.startMicros(n)).isEqualTo(starts[n]);
      assertThat(TickUnwrapper.conversionAt(starts[n])).isEqualTo(n);
    }
    assertThat(TickUnwrapper.conversionAt(61)).isZero();
    assertThat(TickUnwrapper.conversionAt(124)).isEqualTo(1);
    assertThat(TickUnwrapper.conversionAt(10_000)).isEqualTo(160);
    assertThat(TickUnwrapper.startMicros(16_000L * 86_400)).isEqualTo(86_400_000_000L);
  }

  @Test
  void anchorsAReadingOfAProbeThatHasRunForThreeWraps() {
    // Reading 1 300 000 starts at 13 000 000 000 us = 3 * 2^32 + 115 098 112.
    assertThat(unwrapper.anchor(115_098_112L, 0, SlotPlan.CONVERSIONS_PER_READING)).isTrue();
    assertThat(unwrapper.latestMicros()).isEqualTo(13_000_000_000L);
    assertThat(unwrapper.unwrap(115_108_112L)).isEqualTo(13_000_010_000L);
  }

  @Test
  void anchorsARawBlockByItsSlot() {
    // Conversion 68 719 481 starts at floor(4 294 967 562.5) us, 266 us after the first wrap; it is
    // slot 25.
    assertThat(68_719_481L % 32).isEqualTo(25);
    assertThat(unwrapper.anchor(266, 25, SlotPlan.SLOTS)).isTrue();
    assertThat(unwrapper.latestMicros()).isEqualTo(4_294_967_562L);
  }

  @Test
  void refusesATickThatFitsNoPlan() {
    // 2^32 is a multiple of 16 and so are 10 000 and 2000: a reading's tick is one too, however
    // often it wrapped.
    assertThat(unwrapper.anchor(5001, 0, SlotPlan.CONVERSIONS_PER_READING)).isFalse();
    assertThat(unwrapper.latestMicros()).isZero();
  }
}
