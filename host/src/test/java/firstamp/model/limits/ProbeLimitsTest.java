package firstamp.model.limits;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import firstamp.model.JobSheet;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.protocol.values.RailWindow;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ProbeLimitsTest {
  private static JobSheet sheet(
      String sits, double nominalV, JobSheet.Limits limits, JobSheet.Rail... rails) {
    return new JobSheet(
        1,
        new JobSheet.SetInfo("Set", "other", "negative"),
        new JobSheet.Supply(
            "bench", sits, nominalV, 0.85 * nominalV, 1.15 * nominalV, null, null, true),
        limits,
        List.of(rails),
        null,
        Map.of());
  }

  private static final JobSheet.Limits USUAL = new JobSheet.Limits(4.5, 60.0, 1.0, 0.3, null);

  private static JobSheet.Limits running(double ampere) {
    return new JobSheet.Limits(4.5, 60.0, ampere, 0.3, null);
  }

  private static ProbeLimits plan(JobSheet.Limits limits) throws LimitException {
    return ProbeLimits.plan(sheet("supply-lead", 12, limits), Calibration.nominal());
  }

  /** Worked by hand with 12.5 A / 1024 = 12.207 mA and 0.4 A / 1024 = 0.390625 mA a count. */
  @Test
  void turnsAmpereIntoCounts() throws LimitException {
    ProbeLimits limits = plan(new JobSheet.Limits(4.5, 60.0, 1.0, 0.3, null));
    assertThat(limits.counts().inrushMillis()).isEqualTo(60);
    assertThat(limits.counts().inrushICounts()).isEqualTo(368); // 368.64
    assertThat(limits.counts().runningICounts()).isEqualTo(81); // 81.92
    assertThat(limits.counts().runningJCounts()).isZero();
    assertThat(limits.counts().i2tRunningICounts()).isEqualTo(81);
    // 0.3 / (0.01220703^2 * 250e-6) = 8 053 063.7
    assertThat(limits.counts().i2tBudgetCounts2()).isEqualTo(8_053_063);
    assertThat(limits.counts().overVCounts()).isEqualTo(235); // 13.8 / 0.05859375 = 235.52
    assertThat(
            List.of(
                limits.counts().confirmI(),
                limits.counts().confirmJ(),
                limits.counts().confirmRail()))
        .containsExactly(3, 2, 3);
    assertThat(limits.counts().silenceMillis()).isEqualTo(2000);
    assertThat(limits.counts().rails()).extracting(RailWindow::lowCounts).containsExactly(0, 0, 0);
    assertThat(limits.counts().rails())
        .extracting(RailWindow::highCounts)
        .containsExactly(1023, 1023, 1023);
  }

  @Test
  void aSmallLimitActsOnTheFineRangeAndTheCoarseOneStandsBehindIt() throws LimitException {
    ProbeLimits limits = plan(running(0.030));
    assertThat(limits.counts().runningJCounts()).isEqualTo(76); // 76.8
    assertThat(limits.counts().runningICounts()).isEqualTo(5); // 2.46, three counts behind
    assertThat(limits.planned())
        .filteredOn(one -> one.field().equals("limits.runningA"))
        .singleElement()
        .satisfies(
            one -> {
              assertThat(one.channel()).isEqualTo(Channel.J);
              assertThat(one.usedValue()).isCloseTo(0.0296875, within(1e-12));
              assertThat(one.withinMs()).isEqualTo(4.1);
            });
    assertThat(plan(running(0.3499)).counts().runningJCounts()).isEqualTo(895);
    assertThat(plan(running(0.35)).counts().runningJCounts()).isZero();
  }

  @Test
  void pulsedCurrentIsJudgedByMeanAndPeak() throws LimitException {
    ProbeLimits limits =
        ProbeLimits.plan(
            sheet("before-reservoir", 12, new JobSheet.Limits(4.0, 60.0, 0.5, 0.3, null)),
            Calibration.nominal());
    assertThat(limits.counts().runningICounts()).isZero();
    assertThat(limits.counts().meanISixteenths()).isEqualTo(655); // 40.96 * 16 = 655.36
    assertThat(limits.counts().meanJSixteenths()).isZero();
    assertThat(limits.counts().peakICounts()).isEqualTo(327); // the surge limit: 327.68
    ProbeLimits fine =
        ProbeLimits.plan(
            sheet("before-reservoir", 12, new JobSheet.Limits(4.0, 60.0, 0.05, 0.3, 1.0)),
            Calibration.nominal());
    assertThat(fine.counts().meanJSixteenths()).isEqualTo(2048);
    assertThat(fine.counts().meanISixteenths()).isEqualTo(112);
    assertThat(fine.counts().peakICounts()).isEqualTo(81);
  }

  @Test
  void refusesWhatIsFinerThanFourCountsOrBeyondTheRange() {
    LimitException fine = catchThrowableOfType(LimitException.class, () -> plan(running(0.0015)));
    assertThat(fine)
        .hasMessage(
            "limits.runningA is 0.0015 A, this probe can watch 0.0016 to 12.4 A. Write a larger"
                + " value, or leave the field out.");
    LimitException surge =
        catchThrowableOfType(
            LimitException.class, () -> plan(new JobSheet.Limits(0.048, 60.0, 1.0, 0.3, null)));
    assertThat(surge).hasMessageContaining("0.0489 to 12.4 A");
    assertThat(
            catchThrowableOfType(
                LimitException.class, () -> plan(new JobSheet.Limits(13.0, 60.0, 1.0, 0.3, null))))
        .hasMessageContaining("Write a smaller value");
    assertThat(
            catchThrowableOfType(
                LimitException.class, () -> plan(new JobSheet.Limits(4.5, 60.0, 1.0, 100.0, null))))
        .hasMessageContaining("limits.i2tA2s is 100 A2s");
  }

  @Test
  void railsAreLimitedOnBothSidesOfTheChassis() throws LimitException {
    JobSheet.Rail rail = new JobSheet.Rail(2, "B", -9.0, 10.0, 500.0, 9.8, null, null, "none");
    ProbeLimits limits =
        ProbeLimits.plan(sheet("supply-lead", 12, USUAL, rail), Calibration.nominal());
    // (20 - 9.8) / 0.0390625 = 261.12, (20 + 9.8) / 0.0390625 = 762.88
    assertThat(limits.counts().rails())
        .extracting(RailWindow::lowCounts)
        .containsExactly(0, 262, 0);
    assertThat(limits.counts().rails())
        .extracting(RailWindow::highCounts)
        .containsExactly(1023, 762, 1023);
    assertThat(limits.withoutRail(2).counts().rails())
        .extracting(RailWindow::highCounts)
        .containsExactly(1023, 1023, 1023);
    assertThat(limits.withoutRail(2).counts().rails())
        .extracting(RailWindow::lowCounts)
        .containsExactly(0, 0, 0);
    JobSheet.Rail far = new JobSheet.Rail(1, "B", 24.0, 10.0, 500.0, null, null, null, "none");
    assertThat(
            catchThrowableOfType(
                LimitException.class,
                () ->
                    ProbeLimits.plan(sheet("supply-lead", 28, USUAL, far), Calibration.nominal())))
        .hasMessageContaining("rails[0].nominalV is 24 V");
  }

  /** 330 * 0.390625 / 58.59375 = 2.2; 3 ohm 0.02; 30 ohm 0.2; each in 1/256. */
  @Test
  void theLookIsAskedForInCounts() {
    ProbeLimits.LookParameters look =
        ProbeLimits.look(sheet("supply-lead", 12, null), Calibration.nominal(), 330);
    assertThat(look.skip()).isFalse();
    assertThat(look.voltsPerFine()).isEqualTo(563);
    assertThat(look.shortVoltsPerFine()).isEqualTo(5);
    assertThat(look.lowVoltsPerFine()).isEqualTo(51);
    assertThat(look.supplyLowest()).isEqualTo(61); // 3.6 V
    assertThat(look.supplyHighest()).isEqualTo(236); // 13.8 V
    assertThat(ProbeLimits.look(sheet("s", 60, null), Calibration.nominal(), 330).skip()).isFalse();
  }

  /**
   * I2t of an exponential surge (whole tail) is Ip^2 tau / 2: 20 A with tau 10 ms gives 2.0 A2s
   * (integral of the definition; fuse selection guides, from memory). 10 A, tau 40 ms likewise 2.0
   * A2s, within the coarse range. Summed over conversions as the probe does, against the budget.
   */
  @Test
  void theBudgetOfSurgeHeatMeansAmpereSquaredSeconds() throws LimitException {
    ProbeLimits limits = plan(new JobSheet.Limits(4.5, 60.0, 1.0, 2.0, null));
    double step = Calibration.nominal().scale(Channel.I).perCount();
    long sum = 0;
    for (int k = 0; k < 4000; k++) {
      long counts = Math.round(10 * Math.exp(-k * 250e-6 / 0.040) / step);
      sum += counts * counts;
    }
    assertThat((double) sum / limits.counts().i2tBudgetCounts2()).isCloseTo(1.0, within(0.01));
  }

  /** The three that always end low; each of them left out once. */
  @Test
  void neverPlansWithoutSurgeRunningAndHeat() {
    for (JobSheet.Limits gap :
        new JobSheet.Limits[] {
          null,
          new JobSheet.Limits(null, 60.0, 1.0, 0.3, null),
          new JobSheet.Limits(4.5, null, 1.0, 0.3, null),
          new JobSheet.Limits(4.5, 60.0, null, 0.3, null),
          new JobSheet.Limits(4.5, 60.0, 1.0, null, null)
        }) {
      assertThatThrownBy(() -> plan(gap))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessageContaining("filled in");
    }
  }

  /**
   * A set of 5 mA shows 0 or 1 count of 12.2 mA; each conversion at 1 count over a running current
   * of 0 counts adds 3.7e-8 A2s (0.012207^2 * 250e-6): 0.3 A2s would be used up after 34 minutes.
   */
  @Test
  void theConvertersOwnStepsNeverUseTheBudgetUp() throws LimitException {
    assertThat(plan(running(0.0075)).counts().i2tRunningICounts()).isEqualTo(4);
    assertThat(plan(running(0.3)).counts().i2tRunningICounts()).isEqualTo(24); // 24.58
  }

  /** 0.5 A of mean in pulses: up to 1.5 A effective is no surge. 1.5 / 0.012207 = 122.9. */
  @Test
  void aRectifiersPulsesAreNoSurge() throws LimitException {
    ProbeLimits limits =
        ProbeLimits.plan(
            sheet("before-reservoir", 12, new JobSheet.Limits(4.0, 60.0, 0.5, 0.3, null)),
            Calibration.nominal());
    assertThat(limits.counts().i2tRunningICounts()).isEqualTo(122);
  }
}
