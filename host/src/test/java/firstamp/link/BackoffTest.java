package firstamp.link;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class BackoffTest {
  @Test
  void triesAtOnceThenEverMoreSeldomUpToTwoSeconds() {
    Backoff backoff = new Backoff();
    StringBuilder triesAtMillis = new StringBuilder();
    for (long ms = 0; ms <= 10_000; ms += 10) {
      if (backoff.due(ms * 1_000_000)) {
        triesAtMillis.append(ms).append(' ');
      }
    }
    assertThat(triesAtMillis.toString()).isEqualTo("0 100 300 700 1500 3100 5100 7100 9100 ");
    backoff.reset();
    assertThat(backoff.due(9_200_000_000L)).isTrue();
  }
}
