package firstamp.analysis.figures;

import firstamp.model.samples.Channel;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import firstamp.model.samples.SamplePlan;

/** The first seconds of all three rails, from conversions and readings. Not thread-safe. */
final class RailStarts {
  private static final long SPAN = RailStart.CONVERSIONS * 16L;

  private final RailStart[] starts = {null, new RailStart(), new RailStart(), new RailStart()};
  private long closedIndex;

  /** The switch closed: everything restarts. */
  void closed(long micros) {
    closedIndex = SamplePlan.indexAt(micros);
    for (int rail = 1; rail <= 3; rail++) {
      starts[rail].clear();
    }
  }

  /** Takes conversions after closing: slots 7, 11, 15 of each sixteen are the rails. */
  void accept(ConversionBlock block) {
    long begin = block.firstIndex() - closedIndex;
    short[] counts = block.counts();
    if (begin >= SPAN || begin + counts.length <= 0) {
      return;
    }
    for (int k = 0; k < counts.length; k++) {
      long at = begin + k;
      int slot = (int) (at & 15);
      if (at >= 0 && at < SPAN && slot % 4 == 3 && slot > 3) {
        starts[slot / 4].conversion((int) (at >> 4), counts[k]);
      }
    }
  }

  /** Takes a reading with its number since closing. */
  void reading(int number, Reading reading) {
    if (number < RailStart.READINGS) {
      for (int rail = 1; rail <= 3; rail++) {
        starts[rail].reading(number, reading.sum(Channel.ofRail(rail)));
      }
    }
  }

  /** Start of one rail. */
  RailStart of(int rail) {
    return starts[rail];
  }

  /** Time of a rail's first conversion after closing. */
  static double offsetSeconds(int rail) {
    return (3 + 4 * rail) * 62.5e-6;
  }
}
