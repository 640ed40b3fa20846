package firstamp.window;

import firstamp.bench.BenchSession;
import firstamp.bench.Snapshot;
import firstamp.model.JobSheet;
import firstamp.model.Summary;
import firstamp.trend.Course;
import java.util.List;
import java.util.concurrent.locks.LockSupport;

/** A power-up that has been on for hours and stays on, without a probe behind it. */
final class LongSession implements BenchSession {
  private final Course course = new Course();
  private final JobSheet sheet;
  private final double hours;
  private volatile boolean stopped;
  private final Thread thread = new Thread(this::goOn, "readings");
  private long slot;

  LongSession(JobSheet sheet, double hours) {
    this.sheet = sheet;
    this.hours = hours;
    while (slot < hours * 360_000) {
      append();
    }
  }

  void start() {
    thread.setDaemon(true);
    thread.start();
  }

  private void append() {
    float wave = (float) Math.sin(slot / 7000.0) + (slot * 7919 % 101) / 500f;
    float[] mean = {0.118f + 0.01f * wave, 12 + 0.1f * wave, 8.2f, -4f, Float.NaN, -56 + wave, -18};
    float[] low = mean.clone();
    float[] high = mean.clone();
    for (int q = 0; q < mean.length; q++) {
      low[q] -= 0.01f;
      high[q] += 0.01f;
    }
    course.append(slot++ * 10, low, high, mean);
  }

  private void goOn() {
    long begin = System.nanoTime();
    long first = slot;
    while (!stopped) {
      while ((slot - first) * 10_000_000L < System.nanoTime() - begin) {
        append();
      }
      LockSupport.parkNanos(5_000_000);
    }
  }

  @Override
  public Snapshot snapshot() {
    double now = course.endMs();
    return new Snapshot(
        Snapshot.Phase.ON,
        Snapshot.Kind.EMULATED,
        1,
        null,
        sheet,
        null,
        null,
        new Snapshot.Times(now, 2000.0, now - 2000),
        new Snapshot.Figures(
            course.meanBefore(Course.Quantity.SUPPLY_A, now, 100),
            course.meanBefore(Course.Quantity.SUPPLY_V, now, 100),
            List.of(new Snapshot.Rail(1, "B1", 8.2, 7.79, 8.61, true)),
            new Snapshot.Levels(-56.0, 120.0, -18.0)),
        new Snapshot.Limits(4.5, 60.0, 1.0, 11.0, 13.0),
        new Snapshot.Findings(
            List.of(),
            new Summary.LookFigures("clear", 210.0, 3180.0, 12.02),
            null,
            List.of(),
            null),
        new Snapshot.Link(Snapshot.LinkState.GOOD, "port", null, 0, false),
        new Snapshot.Log(true, "bench.db", null),
        List.of(),
        List.of(),
        course,
        null,
        Snapshot.Beside.NOTHING);
  }

  @Override
  public void off() {
    stopped = true;
  }

  @Override
  public void mark(String text) {}

  @Override
  public void acknowledge() {}

  @Override
  public void restore(int tripNumber) {}

  @Override
  public void answer(String questionId, boolean yes) {}

  @Override
  public void seek(double ms) {}

  @Override
  public void speed(double factor) {}

  @Override
  public void pause(boolean held) {}

  @Override
  public void step() {}

  @Override
  public void close() {
    stopped = true;
  }
}
