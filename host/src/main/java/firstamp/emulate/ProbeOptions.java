package firstamp.emulate;

import firstamp.emulate.box.BoxKind;
import firstamp.emulate.line.Faults;
import firstamp.emulate.line.Pace;
import firstamp.model.PedalJob;
import java.util.Objects;

/**
 * How the emulated probe runs.
 *
 * @param seed of the box, of noise and faults
 * @param pace of its time
 * @param noiseCounts standard deviation of a conversion, counts, 0 = off
 * @param faults what goes wrong
 * @param recording whether what was at the clips is kept, to be written as a waveform file
 * @param pedal what the box itself does with its pedal until the host tells it
 * @param box which box it is, drawn by the seed
 */
public record ProbeOptions(
    long seed,
    Pace pace,
    double noiseCounts,
    Faults faults,
    boolean recording,
    PedalJob pedal,
    BoxKind box) {
  /** Noise of a conversion unless said otherwise. */
  public static final double NOISE_COUNTS = 0.7;

  /** Checks the range. */
  public ProbeOptions {
    Objects.requireNonNull(pace, "pace");
    Objects.requireNonNull(faults, "faults");
    Objects.requireNonNull(pedal, "pedal");
    Objects.requireNonNull(box, "box");
    if (!(noiseCounts >= 0 && noiseCounts < 100)) {
      throw new IllegalArgumentException("noiseCounts " + noiseCounts + ", allowed 0 to 100");
    }
  }

  /** A soldered, calibrated box with the usual noise, no faults, nothing kept. */
  public static ProbeOptions of(long seed, Pace pace) {
    return new ProbeOptions(
        seed, pace, NOISE_COUNTS, Faults.NONE, false, PedalJob.OFF, BoxKind.SOLDERED);
  }

  /** With other noise, counts. */
  public ProbeOptions withNoiseCounts(double counts) {
    return new ProbeOptions(seed, pace, counts, faults, recording, pedal, box);
  }

  /** With faults. */
  public ProbeOptions withFaults(Faults wrong) {
    return new ProbeOptions(seed, pace, noiseCounts, wrong, recording, pedal, box);
  }

  /** With another job of the box's pedal. */
  public ProbeOptions withPedal(PedalJob job) {
    return new ProbeOptions(seed, pace, noiseCounts, faults, recording, job, box);
  }

  /** Keeps what was at the clips. */
  public ProbeOptions withRecording() {
    return new ProbeOptions(seed, pace, noiseCounts, faults, true, pedal, box);
  }

  /** Another kind of box. */
  public ProbeOptions withBox(BoxKind kind) {
    return new ProbeOptions(seed, pace, noiseCounts, faults, recording, pedal, kind);
  }
}
