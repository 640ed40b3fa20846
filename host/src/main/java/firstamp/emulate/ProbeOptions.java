package firstamp.emulate;

import firstamp.protocol.CalibrationData;

/**
 * How the emulated probe runs.
 *
 * @param seed of noise and faults
 * @param pace of its time
 * @param noiseCounts standard deviation of a conversion, counts, 0 = off
 * @param faults what goes wrong
 * @param calibration stored in the probe, null = blank
 * @param recorder keeps what was at the clips, null = none
 */
record ProbeOptions(
    long seed,
    Pace pace,
    double noiseCounts,
    Faults faults,
    CalibrationData calibration,
    WaveformRecorder recorder) {
  static final double NOISE_COUNTS = 0.7;

  ProbeOptions {
    if (!(noiseCounts >= 0 && noiseCounts < 100)) {
      throw new IllegalArgumentException("noiseCounts " + noiseCounts + ", allowed 0 to 100");
    }
  }
}
