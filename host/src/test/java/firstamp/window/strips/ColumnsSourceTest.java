package firstamp.window.strips;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.bench.Snapshot;
import firstamp.trend.Course;
import firstamp.window.FakeSession;
import firstamp.window.widgets.Columns;
import org.junit.jupiter.api.Test;

class ColumnsSourceTest {
  /**
   * Another page was in front for longer than the strips are wide: the next picture has no column
   * in common with the last one. It failed once, and a window that fails opens the switch.
   */
  @Test
  void aPictureLongAfterTheLastOneSharesNothingWithIt() {
    Snapshot now = new FakeSession(FakeSession.Scene.HEALTHY).snapshot();
    ColumnsSource source = new ColumnsSource();
    TimeView time = new TimeView();
    time.show(0, 200);
    source.begin(now, time, 50);
    source.of(Course.Quantity.SUPPLY_V);
    for (double from : new double[] {3000, 0, 6000}) {
      time.show(from, from + 200);
      source.begin(now, time, 50);
      Columns later = source.of(Course.Quantity.SUPPLY_V);
      assertThat(later.firstMs()).isLessThanOrEqualTo(from);
      assertThat(later.mean()[0]).as("from %s", from).isFinite();
    }
  }
}
