package firstamp.protocol.values;

import java.util.List;

/**
 * What the probe trips on by itself; fields and their numbers as in wire-format.md, "Limits".
 * Currents are counts above the zero that the probe took, 0 = not watched; rails are absolute
 * counts.
 *
 * @param inrushMillis how long the inrush limit acts instead of the running one, 0 to 10 000
 * @param inrushICounts 0 or 4 to 1020
 * @param runningICounts 0 or 4 to 1020
 * @param runningJCounts 0 or 4 to 1000, in addition to the one on I
 * @param peakICounts 0 or 4 to 1020, after the inrush time, for pulsed current
 * @param meanISixteenths mean of the last 100 ms of I in 1/16 count, 0 or 64 to 16 320
 * @param meanJSixteenths the same of J, 0 or 64 to 16 000
 * @param confirmI conversions in a row that decide, 1 to 8
 * @param confirmJ the same on J
 * @param confirmRail the same on a rail
 * @param confirmV the same on V
 * @param i2tBudgetCounts2 counts squared times conversions of I, 0 to 2 000 000 000
 * @param i2tRunningICounts current that may flow for ever, 0 to 1020
 * @param rails the windows of R1, R2, R3
 * @param overVCounts trip above, counts above zero, 0 to 1022
 * @param silenceMillis host silence that opens the switch, 200 to 10 000
 * @param lookOverJCounts in the look, open it above this, 0 to 1000
 * @param startICounts limit on I while a start is allowed, 0 (none is) or 4 to 1020
 * @param startMillis how long, 0 to 1000
 */
public record TripLimits(
    int inrushMillis,
    int inrushICounts,
    int runningICounts,
    int runningJCounts,
    int peakICounts,
    int meanISixteenths,
    int meanJSixteenths,
    int confirmI,
    int confirmJ,
    int confirmRail,
    int confirmV,
    long i2tBudgetCounts2,
    int i2tRunningICounts,
    List<RailWindow> rails,
    int overVCounts,
    int silenceMillis,
    int lookOverJCounts,
    int startICounts,
    int startMillis) {
  public static final int RAILS = 3;
  private static final int FINEST_COUNTS = 4;
  private static final int FINEST_SIXTEENTHS = 64;
  private static final int MOST_CONFIRMATIONS = 8;

  public TripLimits {
    Check.range(1, "inrushMillis", inrushMillis, 0, 10_000);
    Check.limit(2, "inrushICounts", inrushICounts, FINEST_COUNTS, 1020);
    Check.limit(3, "runningICounts", runningICounts, FINEST_COUNTS, 1020);
    Check.limit(4, "runningJCounts", runningJCounts, FINEST_COUNTS, 1000);
    Check.limit(5, "peakICounts", peakICounts, FINEST_COUNTS, 1020);
    Check.limit(6, "meanISixteenths", meanISixteenths, FINEST_SIXTEENTHS, 16_320);
    Check.limit(7, "meanJSixteenths", meanJSixteenths, FINEST_SIXTEENTHS, 16_000);
    Check.range(8, "confirmI", confirmI, 1, MOST_CONFIRMATIONS);
    Check.range(9, "confirmJ", confirmJ, 1, MOST_CONFIRMATIONS);
    Check.range(10, "confirmRail", confirmRail, 1, MOST_CONFIRMATIONS);
    Check.range(11, "confirmV", confirmV, 1, MOST_CONFIRMATIONS);
    Check.range(12, "i2tBudgetCounts2", i2tBudgetCounts2, 0, 2_000_000_000L);
    Check.range(13, "i2tRunningICounts", i2tRunningICounts, 0, 1020);
    rails = Check.size(14, "rails", rails, RAILS);
    Check.range(16, "overVCounts", overVCounts, 0, 1022);
    Check.range(17, "silenceMillis", silenceMillis, 200, 10_000);
    Check.range(18, "lookOverJCounts", lookOverJCounts, 0, 1000);
    Check.limit(19, "startICounts", startICounts, FINEST_COUNTS, 1020);
    Check.range(20, "startMillis", startMillis, 0, 1000);
  }

  /**
   * Starts from nothing watched, confirmation over 3 conversions of I, V and rails and 2 of J,
   * silence 2000 ms.
   */
  public static Builder builder() {
    return new Builder();
  }

  /** The same without the window of one rail, 1 to 3. */
  public TripLimits withoutRail(int rail) {
    return new Builder(this).rail(rail, RailWindow.NONE).build();
  }

  /** Collects limits by name, because nineteen numbers in a row are easily swapped. */
  public static final class Builder {
    private int inrushMillis;
    private int inrushICounts;
    private int runningICounts;
    private int runningJCounts;
    private int peakICounts;
    private int meanISixteenths;
    private int meanJSixteenths;
    private int confirmI = 3;
    private int confirmJ = 2;
    private int confirmRail = 3;
    private int confirmV = 3;
    private long i2tBudgetCounts2;
    private int i2tRunningICounts;
    private final RailWindow[] rails = {RailWindow.NONE, RailWindow.NONE, RailWindow.NONE};
    private int overVCounts;
    private int silenceMillis = 2000;
    private int lookOverJCounts;
    private int startICounts;
    private int startMillis;

    private Builder() {}

    private Builder(TripLimits from) {
      inrush(from.inrushMillis, from.inrushICounts)
          .running(from.runningICounts, from.runningJCounts)
          .peak(from.peakICounts)
          .mean(from.meanISixteenths, from.meanJSixteenths)
          .confirmCurrent(from.confirmI, from.confirmJ)
          .confirmVolts(from.confirmRail, from.confirmV)
          .i2t(from.i2tBudgetCounts2, from.i2tRunningICounts)
          .overV(from.overVCounts)
          .silenceMillis(from.silenceMillis)
          .lookOverJ(from.lookOverJCounts)
          .start(from.startICounts, from.startMillis);
      from.rails.toArray(rails);
    }

    /** Limit on I within the inrush time. */
    public Builder inrush(int millis, int iCounts) {
      this.inrushMillis = millis;
      this.inrushICounts = iCounts;
      return this;
    }

    /** Limits after the inrush time on I and on J. */
    public Builder running(int iCounts, int jCounts) {
      this.runningICounts = iCounts;
      this.runningJCounts = jCounts;
      return this;
    }

    /** Limit on single peaks of pulsed current. */
    public Builder peak(int iCounts) {
      this.peakICounts = iCounts;
      return this;
    }

    /** Limits on the mean of 100 ms of I and of J, in 1/16 count. */
    public Builder mean(int iSixteenths, int jSixteenths) {
      this.meanISixteenths = iSixteenths;
      this.meanJSixteenths = jSixteenths;
      return this;
    }

    /** Conversions in a row that decide on I and J. */
    public Builder confirmCurrent(int i, int j) {
      this.confirmI = i;
      this.confirmJ = j;
      return this;
    }

    /** Conversions in a row that decide on a rail and on V. */
    public Builder confirmVolts(int rail, int v) {
      this.confirmRail = rail;
      this.confirmV = v;
      return this;
    }

    /** Budget of inrush I2t above a current that may flow for ever. */
    public Builder i2t(long budgetCounts2, int runningICounts) {
      this.i2tBudgetCounts2 = budgetCounts2;
      this.i2tRunningICounts = runningICounts;
      return this;
    }

    /** Window of one rail, 1 to 3. */
    public Builder rail(int rail, RailWindow window) {
      if (rail < 1 || rail > RAILS) {
        throw new IllegalArgumentException("rail is " + rail + "; expected 1 to " + RAILS);
      }
      this.rails[rail - 1] = window;
      return this;
    }

    /** Limit on V, counts above zero. */
    public Builder overV(int counts) {
      this.overVCounts = counts;
      return this;
    }

    /** Host silence that opens the switch. */
    public Builder silenceMillis(int millis) {
      this.silenceMillis = millis;
      return this;
    }

    /** Limit on J within the look. */
    public Builder lookOverJ(int counts) {
      this.lookOverJCounts = counts;
      return this;
    }

    /** One start, whenever it comes. */
    public Builder start(int iCounts, int millis) {
      this.startICounts = iCounts;
      this.startMillis = millis;
      return this;
    }

    /** Checks every range and gives the limits. */
    public TripLimits build() {
      return new TripLimits(
          inrushMillis,
          inrushICounts,
          runningICounts,
          runningJCounts,
          peakICounts,
          meanISixteenths,
          meanJSixteenths,
          confirmI,
          confirmJ,
          confirmRail,
          confirmV,
          i2tBudgetCounts2,
          i2tRunningICounts,
          List.of(rails),
          overVCounts,
          silenceMillis,
          lookOverJCounts,
          startICounts,
          startMillis);
    }
  }
}
