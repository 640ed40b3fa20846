package firstamp.protocol.values;

/**
 * How the first look is taken and judged; fields and their numbers as in wire-format.md, "Look
 * parameters".
 *
 * @param skip no look, the switch closes without one
 * @param longestMillis 100 to 3000
 * @param vPerJ256ths V counts across the look resistor per J count, in 1/256, 1 to 65535
 * @param shortVPerJ256ths V counts per J count at 3 ohm, in 1/256, 1 to 65535
 * @param lowVPerJ256ths the same at 30 ohm
 * @param supplyLowestCounts 0.3 of nominal in V counts, 0 to 1023
 * @param supplyHighestCounts 1.15 of nominal in V counts, 0 to 1023
 * @param chargeLimit J counts times pairs times V counts that the surge may hold, 0 = not watched
 */
public record LookParameters(
    boolean skip,
    int longestMillis,
    int vPerJ256ths,
    int shortVPerJ256ths,
    int lowVPerJ256ths,
    int supplyLowestCounts,
    int supplyHighestCounts,
    long chargeLimit) {
  public LookParameters {
    Check.range(3, "longestMillis", longestMillis, 100, 3000);
    Check.range(4, "vPerJ256ths", vPerJ256ths, 1, Check.U16);
    Check.range(5, "shortVPerJ256ths", shortVPerJ256ths, 1, Check.U16);
    Check.range(6, "lowVPerJ256ths", lowVPerJ256ths, 1, Check.U16);
    Check.range(7, "supplyLowestCounts", supplyLowestCounts, 0, Check.HIGHEST_COUNT);
    Check.range(8, "supplyHighestCounts", supplyHighestCounts, 0, Check.HIGHEST_COUNT);
    Check.range(9, "chargeLimit", chargeLimit, 0, 2_000_000_000L);
  }

  /** A look that does not ask how much the surge holds. */
  public LookParameters(
      boolean skip,
      int longestMillis,
      int vPerJ256ths,
      int shortVPerJ256ths,
      int lowVPerJ256ths,
      int supplyLowestCounts,
      int supplyHighestCounts) {
    this(
        skip,
        longestMillis,
        vPerJ256ths,
        shortVPerJ256ths,
        lowVPerJ256ths,
        supplyLowestCounts,
        supplyHighestCounts,
        0);
  }
}
