package firstamp.analysis.figures;

/**
 * What one closing has brought.
 *
 * @param all of it
 * @param stretches the same cut at what happened
 */
record ClosingSums(IntervalTotals all, Stretches stretches) {
  ClosingSums copy() {
    return new ClosingSums(all.copy(), stretches.copy());
  }
}
