package firstamp.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import firstamp.model.Priority;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The tunes as sound, measured on their samples: no sound device is needed. */
class TuneTest {
  /** Begin and end of each pulse: apart by at least 5 ms of silence. */
  private static List<int[]> pulses(short[] pcm) {
    List<int[]> pulses = new ArrayList<>();
    int quiet = Integer.MAX_VALUE / 2;
    for (int n = 0; n < pcm.length; n++) {
      if (Math.abs(pcm[n]) > 200) {
        if (quiet > 220) {
          pulses.add(new int[] {n, n});
        }
        pulses.get(pulses.size() - 1)[1] = n;
        quiet = 0;
      } else {
        quiet++;
      }
    }
    return pulses;
  }

  /** Amplitude of one frequency by its definition (a sum of products with sine and cosine). */
  private static double amplitude(short[] pcm, int from, int to, double hertz) {
    double re = 0;
    double im = 0;
    for (int n = from; n < to; n++) {
      double w = 2 * Math.PI * hertz * n / Tune.RATE_HERTZ;
      re += pcm[n] * Math.cos(w);
      im += pcm[n] * Math.sin(w);
    }
    return 2 * Math.hypot(re, im) / (to - from);
  }

  private static double pitch(short[] pcm, int[] pulse) {
    double best = 0;
    double found = 0;
    for (double hertz = 100; hertz < 1500; hertz += 1) {
      double here = amplitude(pcm, pulse[0], pulse[1], hertz);
      if (here > best) {
        best = here;
        found = hertz;
      }
    }
    return found;
  }

  @ParameterizedTest
  @EnumSource(Tune.class)
  void isAudibleWithoutClippingOrClicks(Tune tune) {
    short[] pcm = tune.pcm();
    int highest = 0;
    int step = 0;
    for (int n = 0; n < pcm.length; n++) {
      highest = Math.max(highest, Math.abs(pcm[n]));
      step = Math.max(step, n == 0 ? Math.abs(pcm[0]) : Math.abs(pcm[n] - pcm[n - 1]));
    }
    assertThat(highest).isBetween(5_000, 29_000);
    // Steepest sine of three tones together: 2 pi f / rate of full scale each, 988 Hz at most.
    assertThat(step).isLessThan(12_000);
    assertThat(Math.abs(pcm[pcm.length - 1])).isLessThan(50);
    assertThat(pcm.length / (double) Tune.RATE_HERTZ).isBetween(0.15, 1.0);
    assertThat(pulses(pcm)).hasSize(tune.pulses());
  }

  @Test
  void prioritiesDifferInNumberPitchAndLength() {
    Set<Integer> numbers = new HashSet<>();
    Set<Long> pitches = new HashSet<>();
    for (Priority priority : Priority.values()) {
      short[] pcm = Tune.of(priority).pcm();
      List<int[]> pulses = pulses(pcm);
      numbers.add(pulses.size());
      pitches.add(Math.round(pitch(pcm, pulses.get(0)) / 50));
    }
    assertThat(numbers).hasSize(3);
    assertThat(pitches).hasSize(3);
  }

  @Test
  void theTestBeepRisesByTheNotesOfTheOrdinaryScale() {
    // ISO 16: a' = 440 Hz. c'' = 440 x 2^(3/12), e'' = 440 x 2^(7/12), g'' = 440 x 2^(10/12).
    short[] pcm = Tune.TEST.pcm();
    List<int[]> pulses = pulses(pcm);
    assertThat(pitch(pcm, pulses.get(0))).isCloseTo(440 * Math.pow(2, 3 / 12.0), offset(3.0));
    assertThat(pitch(pcm, pulses.get(1))).isCloseTo(440 * Math.pow(2, 7 / 12.0), offset(3.0));
    assertThat(pitch(pcm, pulses.get(2))).isCloseTo(440 * Math.pow(2, 10 / 12.0), offset(3.0));
  }
}
