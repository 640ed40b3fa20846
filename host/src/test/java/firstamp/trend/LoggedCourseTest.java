package firstamp.trend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.log.PowerUpReader;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.run.LoggedRun;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A logged course shows what the live one showed. */
class LoggedCourseTest {
  @TempDir private Path folder;

  private LoggedRun healthy(long forMicros) throws Exception {
    LoggedRun run =
        new LoggedRun(folder, "healthy", forMicros, true, LoggedRun.EachReading.nothing());
    run.run();
    return run;
  }

  private static float[][] columns(TimeCourse course, Course.Quantity quantity, double ms) {
    int n = (int) (Math.min(course.endMs(), 10_000) / ms);
    float[][] all = new float[3][n];
    course.columns(quantity, 0, n * ms, n, all[0], all[1], all[2]);
    return all;
  }

  private static double closedMs(LoggedCourse course, PowerUpReader reader) throws Exception {
    for (ProbeEvent event : reader.events()) {
      if (event instanceof ProbeEvent.SwitchChanged changed && changed.state() == SwitchState.ON) {
        return course.courseMs(changed.micros());
      }
    }
    throw new AssertionError("never closed");
  }

  @Test
  void showsTheSameReadingsAsTheLiveCourse() throws Exception {
    LoggedRun run = healthy(4_000_000);
    PowerUpReader reader = run.reader();
    try (LoggedCourse logged = LoggedCourse.open(reader, reader.events())) {
      assertThat(logged.endMs()).isEqualTo(run.course.endMs());
      columns(logged, Course.Quantity.SUPPLY_A, 10);
      logged.settle();
      // Before the look the live course has no zero yet: the logged one takes it off from the
      // start.
      int first = (int) (closedMs(logged, reader) / 10) + 1;
      assertThat(first).isBetween(200, 700);
      for (Course.Quantity quantity : Course.Quantity.values()) {
        float[][] live = columns(run.course, quantity, 10);
        float[][] stored = columns(logged, quantity, 10);
        for (int k = 0; k < 3; k++) {
          for (int at = first; at < live[k].length; at++) {
            assertThat(Float.valueOf(stored[k][at]))
                .as("%s %d at %d", quantity, k, at)
                .isEqualTo(Float.valueOf(live[k][at]));
          }
        }
      }
    }
  }

  @Test
  void theOverviewIsThereAtOnceAndBecomesFinerByItself() throws Exception {
    LoggedRun run = healthy(4_000_000);
    PowerUpReader reader = run.reader();
    try (LoggedCourse logged = LoggedCourse.open(reader, reader.events())) {
      // Before the first look: what it asks for may be there before the next line.
      long before = logged.version();
      float[][] coarse = columns(logged, Course.Quantity.SUPPLY_V, 10);
      float highest = coarse[1][500];
      assertThat(highest).as("lowest and highest of the whole").isBetween(11f, 13f);
      assertThat(coarse[0][500]).isLessThan(1f);
      logged.settle();
      assertThat(logged.version()).isGreaterThan(before);
      float[][] fine = columns(logged, Course.Quantity.SUPPLY_V, 10);
      assertThat(fine[1][500] - fine[0][500]).isLessThan(1f);
    }
  }

  @Test
  void aToneHasTheSameLevelInTheOverviewAndInTheReadings() throws Exception {
    LoggedRun run = healthy(4_000_000);
    PowerUpReader reader = run.reader();
    try (LoggedCourse logged = LoggedCourse.open(reader, reader.events())) {
      double end = run.course.endMs();
      float[] overview = new float[1];
      float[] unused = new float[1];
      logged.columns(Course.Quantity.METER_DBV, 0, end, 1, unused, overview, new float[1]);
      double loudest = Double.NEGATIVE_INFINITY;
      for (float level : columns(run.course, Course.Quantity.METER_DBV, 10)[1]) {
        loudest = Math.max(loudest, level);
      }
      assertThat((double) overview[0]).isCloseTo(loudest, within(1.0));
    }
  }

  @Test
  void memoryDoesNotGrowWithWhatWasLookedAt() throws Exception {
    LoggedRun run = healthy(2_000_000);
    PowerUpReader reader = run.reader();
    try (LoggedCourse logged = LoggedCourse.open(reader, reader.events())) {
      float[] one = new float[1];
      for (int look = 0; look < 400; look++) {
        // As if eight hours were there: places far behind the end hold nothing and are kept alike.
        logged.request(0, look);
      }
      logged.settle();
      logged.columns(Course.Quantity.SUPPLY_V, 0, 10, 1, one, one.clone(), one.clone());
      assertThat(logged.held()).isLessThanOrEqualTo(96);
    }
  }

  @Test
  void nothingOfTheLogIsReadAnyMoreOnceItIsClosed() throws Exception {
    LoggedRun run = healthy(2_000_000);
    PowerUpReader reader = run.reader();
    LoggedCourse logged = LoggedCourse.open(reader, reader.events());
    for (int look = 0; look < 20; look++) {
      logged.request(0, look);
    }
    logged.close();
    assertThat(logged.reading()).isFalse();
    assertThat(logged.problem()).isNull();
  }
}
