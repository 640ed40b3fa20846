package firstamp.benchmarks;

import java.util.Arrays;

/** Takes times; what is measured was run before, so that the machine's code is there. */
final class Clock {
  /** Something to measure. */
  @FunctionalInterface
  interface Work {
    void run() throws Exception;
  }

  private Clock() {}

  /** Seconds of one run. */
  static double seconds(Work work) throws Exception {
    long begin = System.nanoTime();
    work.run();
    return (System.nanoTime() - begin) / 1e9;
  }

  /** Median seconds of several runs. */
  static double median(int runs, Work work) throws Exception {
    double[] seconds = new double[runs];
    for (int k = 0; k < runs; k++) {
      seconds[k] = seconds(work);
    }
    Arrays.sort(seconds);
    return seconds[runs / 2];
  }
}
