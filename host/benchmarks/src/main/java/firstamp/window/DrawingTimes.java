package firstamp.window;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Arrays;
import javax.swing.RepaintManager;

/** Takes the time of every drawing pass of the window, on the Swing thread. */
final class DrawingTimes extends RepaintManager {
  private final long[] nanos = new long[100_000];
  private final long[] cpuNanos = new long[nanos.length];
  private final ThreadMXBean threads = ManagementFactory.getThreadMXBean();
  private volatile int count;
  private volatile boolean measuring;

  @Override
  public void paintDirtyRegions() {
    long begin = System.nanoTime();
    long cpuBegin = threads.getCurrentThreadCpuTime();
    super.paintDirtyRegions();
    long cpuTook = threads.getCurrentThreadCpuTime() - cpuBegin;
    long took = System.nanoTime() - begin;
    // A pass with nothing to paint takes a few microseconds and is no picture.
    if (measuring && took > 200_000 && count < nanos.length) {
      nanos[count] = took;
      cpuNanos[count] = cpuTook;
      count = count + 1;
    }
  }

  void begin() {
    count = 0;
    measuring = true;
  }

  void end() {
    measuring = false;
  }

  int pictures() {
    return count;
  }

  /** Milliseconds below which a share of the passes lay. */
  double percentile(double share) {
    return percentile(nanos, share);
  }

  /** The same in time of the processor: what the passes take where nothing else runs. */
  double cpuPercentile(double share) {
    return percentile(cpuNanos, share);
  }

  private double percentile(long[] values, double share) {
    long[] sorted = Arrays.copyOf(values, count);
    Arrays.sort(sorted);
    return count == 0 ? Double.NaN : sorted[(int) Math.min(count - 1, share * count)] / 1e6;
  }
}
