package firstamp.analysis.figures;

import firstamp.model.JobSheet;
import firstamp.model.samples.Channel;
import firstamp.model.samples.Reading;
import firstamp.model.samples.Scaling;

/** What one closing has brought so far. Not thread-safe. */
final class IntervalTotals {
  /** Ten seconds of readings are kept one by one. */
  private static final int START_READINGS = 1000;

  private final SupplyStart supply;
  private final SteadySums steady;
  private final SettleTimes[] settle = new SettleTimes[4];

  private IntervalTotals(SupplyStart supply, SteadySums steady) {
    this.supply = supply;
    this.steady = steady;
  }

  /**
   * Empty.
   *
   * @param levels empty sums of levels
   * @param toneHz of the sheet; null = none
   */
  IntervalTotals(LevelSums levels, Double toneHz) {
    this(new SupplyStart(), new SteadySums(START_READINGS, levels, toneHz));
    for (int rail = 1; rail <= 3; rail++) {
      settle[rail] = new SettleTimes();
    }
  }

  IntervalTotals copy() {
    IntervalTotals copy = new IntervalTotals(supply.copy(), steady.copy());
    for (int rail = 1; rail <= 3; rail++) {
      copy.settle[rail] = settle[rail].copy();
    }
    return copy;
  }

  /** Takes a reading that began while it was on. */
  void begun(int number, Reading reading, Scaling scaling) {
    supply.add(number, reading, scaling);
  }

  /** Takes a reading that lies wholly in the time on. */
  void whole(int number, Reading reading, Scaling scaling, JobSheet sheet) {
    steady.add(number, reading, scaling);
    for (JobSheet.Rail rail : sheet.rails()) {
      settle[rail.input()].add(reading.sum(Channel.ofRail(rail.input())), number + 1);
    }
  }

  SupplyStart supply() {
    return supply;
  }

  SteadySums steady() {
    return steady;
  }

  SettleTimes settle(int rail) {
    return settle[rail];
  }
}
