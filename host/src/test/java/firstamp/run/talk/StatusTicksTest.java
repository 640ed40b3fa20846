package firstamp.run.talk;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class StatusTicksTest {
  private static final long EVERY_MICROS = 200_000;
  private static final long WRAP_MICROS = 1L << 32;

  private final StatusTicks ticks = new StatusTicks();

  private boolean jumped(long micros) {
    return ticks.jumped(micros % WRAP_MICROS);
  }

  @Test
  void clockThatGoesOnIsTheSameOverEveryWrap() {
    for (long micros = 0; micros < 3 * WRAP_MICROS; micros += EVERY_MICROS) {
      assertThat(jumped(micros)).as("%d us", micros).isFalse();
    }
  }

  @Test
  void clockThatBeganAnewIsFoundWhereverItStood() {
    for (long micros = 2_000_000; micros < WRAP_MICROS - 700_000_000; micros += 7_000_000) {
      ticks.beginAnew();
      jumped(micros);
      assertThat(jumped(300_000)).as("began anew at %d us", micros).isTrue();
      assertThat(jumped(500_000)).as("still not the same clock").isTrue();
    }
  }

  @Test
  void afterAHelloAnyClockIsTaken() {
    jumped(5_000_000);
    ticks.beginAnew();
    assertThat(jumped(300_000)).isFalse();
    assertThat(jumped(500_000)).isFalse();
  }
}
