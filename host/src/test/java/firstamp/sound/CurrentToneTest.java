package firstamp.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import org.junit.jupiter.api.Test;

class CurrentToneTest {
  private final CurrentTone tone = new CurrentTone();
  private double atMs;

  /** Readings of 10 ms; gives what is heard of the last 100 ms. */
  private short[] feed(double ampere, double seconds) {
    short[] last = new short[Tune.RATE_HERTZ / 10];
    for (int k = 0; k < seconds * 10; k++) {
      for (int n = 0; n < 10; n++) {
        tone.current(ampere, atMs);
        atMs += 10;
      }
      last = new short[Tune.RATE_HERTZ / 10];
      tone.mixInto(last);
    }
    return last;
  }

  private static int loudest(short[] pcm) {
    int loudest = 0;
    for (short sample : pcm) {
      loudest = Math.max(loudest, Math.abs(sample));
    }
    return loudest;
  }

  /** Pitch from the rising passages through zero. */
  private static double hertz(short[] pcm) {
    int first = -1;
    int last = -1;
    int count = -1;
    for (int n = 1; n < pcm.length; n++) {
      if (pcm[n - 1] < 0 && pcm[n] >= 0) {
        first = first < 0 ? n : first;
        last = n;
        count++;
      }
    }
    return count * (double) Tune.RATE_HERTZ / (last - first);
  }

  @Test
  void steadyCurrentIsSilent() {
    assertThat(loudest(feed(0.118, 3))).isZero();
    assertThat(tone.sounding()).isFalse();
  }

  @Test
  void aStepIsHeardAtTheNewPitchAndFallsSilentWhenSteady() {
    feed(0.010, 2);
    short[] heard = feed(0.100, 1.5);
    assertThat(loudest(heard)).isGreaterThan(3_000);
    assertThat(hertz(heard)).isCloseTo(220 * Math.pow(10, 0.4), offset(12.0));
    feed(0.100, 20);
    assertThat(tone.sounding()).isFalse();
  }

  @Test
  void oneAndAHalfPercentIsTheEdge() {
    feed(0.100, 2);
    assertThat(loudest(feed(0.1012, 1))).as("1.2 %").isZero();
    feed(0.1012, 15);
    assertThat(loudest(feed(0.1042, 1))).as("3 %").isPositive();
  }

  @Test
  void pitchRisesWithCurrentAndStaysWithinHearing() {
    assertThat(CurrentTone.hertz(0.010)).isEqualTo(220);
    assertThat(CurrentTone.hertz(0.020)).isGreaterThan(CurrentTone.hertz(0.018));
    assertThat(CurrentTone.hertz(0)).isEqualTo(110);
    assertThat(CurrentTone.hertz(50)).isEqualTo(1760);
  }

  @Test
  void fadesWithoutAStep() {
    feed(0.010, 1);
    short[] all = new short[Tune.RATE_HERTZ / 2];
    for (int n = 0; n < 20; n++) {
      tone.current(0.2, atMs);
      atMs += 10;
    }
    tone.mixInto(all);
    int step = 0;
    for (int n = 1; n < all.length; n++) {
      step = Math.max(step, Math.abs(all[n] - all[n - 1]));
    }
    // 0.22 of full scale at 730 Hz moves by 750 a sample at most.
    assertThat(step).isBetween(1, 900);
  }

  @Test
  void offIsSilent() {
    feed(0.010, 1);
    feed(0.2, 1);
    tone.off();
    feed2();
    assertThat(tone.sounding()).isFalse();
  }

  private void feed2() {
    for (int k = 0; k < 5; k++) {
      tone.mixInto(new short[Tune.RATE_HERTZ / 10]);
    }
  }
}
