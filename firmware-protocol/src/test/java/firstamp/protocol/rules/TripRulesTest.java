package firstamp.protocol.rules;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.protocol.codes.TripCause;
import firstamp.protocol.values.RailWindow;
import firstamp.protocol.values.SlotPlan;
import firstamp.protocol.values.TripLimits;
import java.util.function.LongPredicate;
import java.util.function.LongToIntFunction;
import org.junit.jupiter.api.Test;

/** The sentences of trip-rules.md one by one, with figures worked out by hand. */
class TripRulesTest {
  private static final Zeros NO_ZERO = new Zeros(0, 0, 0);

  private static TripDecision first(
      TripRules rules, LongToIntFunction counts, LongPredicate lost, long conversions) {
    for (long n = 0; n < conversions; n++) {
      TripDecision decision = lost.test(n) ? null : rules.conversion(n, counts.applyAsInt(n));
      if (decision != null) {
        return decision;
      }
    }
    return null;
  }

  private static TripDecision first(TripLimits limits, LongToIntFunction counts) {
    return first(new TripRules(limits, NO_ZERO, 0), counts, n -> false, 16_000);
  }

  private static int channel(long n) {
    return SlotPlan.channelAt((int) (n % SlotPlan.SLOTS));
  }

  /** I conversions numbered from 0 are n = 0, 4, 8 ...; everything else reads 0. */
  private static LongToIntFunction i(LongToIntFunction ofNumber) {
    return n -> n % 4 == 0 ? ofNumber.applyAsInt(n / 4) : 0;
  }

  @Test
  void zeroIsRoundedHalfUpAndLevelEndsBelowFullScale() {
    assertThat(Zeros.counts(7)).isZero();
    assertThat(Zeros.counts(8)).isEqualTo(1);
    TripLimits limits = TripLimits.builder().running(1020, 0).confirmCurrent(1, 1).build();
    // 1020 + 5 counts of zero would be 1025, over the end of the converter: 1022.
    TripDecision decision =
        first(new TripRules(limits, new Zeros(80, 0, 0), 0), n -> 1023, n -> false, 1);
    assertThat(decision.limit()).isEqualTo(1022);
    assertThat(first(new TripRules(limits, new Zeros(80, 0, 0), 0), n -> 1022, n -> false, 99))
        .isNull();
  }

  @Test
  void aRowIsResetByOneThatIsNotOverAndNotByALostOne() {
    TripLimits limits = TripLimits.builder().running(100, 0).confirmCurrent(3, 2).build();
    assertThat(first(limits, i(k -> k % 3 == 2 ? 100 : 101))).isNull();
    // Number 2 is lost: 0, 1 and 3 are the row.
    TripDecision decision = first(new TripRules(limits, NO_ZERO, 0), i(k -> 101), n -> n == 8, 100);
    assertThat(decision.confirmed()).isEqualTo(3);
    assertThat(decision.crossedTickMicros()).isZero();
  }

  @Test
  void inrushAndRunningLimitShareOneRow() {
    // Inrush time 1 ms: numbers 0 to 3. Number 3 is over 200, 4 and 5 are over 100 only.
    TripLimits limits =
        TripLimits.builder().inrush(1, 200).running(100, 0).confirmCurrent(3, 2).build();
    TripDecision decision = first(limits, i(k -> k < 3 ? 0 : k == 3 ? 201 : k < 6 ? 101 : 0));
    assertThat(decision.cause()).isEqualTo(TripCause.RUNNING);
    assertThat(decision.crossedTickMicros()).isEqualTo(750);
  }

  @Test
  void fineCurrentIsWatchedAfterTheInrushTimeOnly() {
    // J is slot 19: conversions 19, 51, 83 ... Inrush time 3 ms = 48 conversions.
    TripLimits limits =
        TripLimits.builder().inrush(3, 0).running(0, 100).confirmCurrent(3, 2).build();
    TripDecision decision = first(limits, n -> channel(n) == SlotPlan.J ? 101 : 0);
    assertThat(decision.crossedTickMicros()).isEqualTo(51 * 125 / 2);
    assertThat(decision.confirmed()).isEqualTo(2);
  }

  @Test
  void runningBeforePeakBeforeI2t() {
    TripLimits.Builder all = TripLimits.builder().confirmCurrent(1, 1).peak(50).i2t(10, 0);
    assertThat(first(all.running(50, 0).build(), i(k -> 60)).cause()).isEqualTo(TripCause.RUNNING);
    assertThat(first(all.running(0, 0).build(), i(k -> 60)).cause()).isEqualTo(TripCause.PEAK);
    assertThat(first(all.peak(0).build(), i(k -> 60)).cause()).isEqualTo(TripCause.I2T);
  }

  @Test
  void i2tNeverGoesUnderZeroAndTripsAboveItsBudget() {
    // 30^2 - 20^2 = 500 a conversion: 2 of them are 1000, not over; the third is.
    TripLimits limits = TripLimits.builder().i2t(1000, 20).build();
    TripRules rules = new TripRules(limits, NO_ZERO, 0);
    TripDecision decision = first(rules, i(k -> k < 100 ? 0 : 30), n -> false, 1000);
    assertThat(decision.crossedTickMicros()).isEqualTo(102 * 250);
    assertThat(rules.i2tCounts2()).isEqualTo(1500);
  }

  /** 400 conversions whose sum is 25 x 160 + 24: 160.96 sixteenths are rounded down to 160. */
  @Test
  void theMeanIsRoundedDownBeforeItIsCompared() {
    TripLimits limits = TripLimits.builder().mean(160, 0).build();
    assertThat(first(limits, i(k -> k < 24 ? 11 : 10))).isNull();
    TripDecision decision = first(limits, i(k -> k < 25 ? 11 : 10));
    assertThat(decision.cause()).isEqualTo(TripCause.MEAN);
    assertThat(decision.value()).isEqualTo(161);
    // After ten readings: conversion 1599.
    assertThat(decision.crossedTickMicros()).isEqualTo(1599 * 125 / 2);
  }

  @Test
  void theMeanOfJRestsWhileOneOfItsConversionsIsOverAThousand() {
    TripLimits limits = TripLimits.builder().mean(0, 64).build();
    LongToIntFunction once = n -> channel(n) != SlotPlan.J ? 0 : n == 19 ? 1001 : 10;
    // The first reading is out of the ten after the eleventh.
    assertThat(first(limits, once).crossedTickMicros()).isEqualTo((11 * 160 - 1) * 125 / 2);
  }

  @Test
  void aLostConversionMakesTheTenReadingsStartAgain() {
    TripLimits limits = TripLimits.builder().mean(160, 0).build();
    TripRules rules = new TripRules(limits, NO_ZERO, 0);
    // Number 4 of I in the fifth reading: ten more from the sixth on.
    TripDecision decision = first(rules, i(k -> 20), n -> n == 4 * 160 + 16, 16_000);
    assertThat(decision.crossedTickMicros()).isEqualTo((15 * 160 - 1) * 125 / 2);
    TripRules passedOver = new TripRules(limits, NO_ZERO, 0);
    TripDecision later = first(passedOver, i(k -> 20), n -> n == 4 * 160, 16_000);
    assertThat(later.crossedTickMicros()).isEqualTo((11 * 160 - 1) * 125 / 2);
  }

  @Test
  void railsAreWatchedFromTheFirstConversionAndVoltsFromTheSecondMillisecond() {
    TripLimits limits =
        TripLimits.builder()
            .inrush(1000, 0)
            .rail(2, new RailWindow(400, 600))
            .overV(200)
            .confirmVolts(1, 1)
            .build();
    // R2 is first converted in slot 11, V in slot 3.
    LongToIntFunction low = n -> channel(n) == SlotPlan.R2 ? 399 : 0;
    assertThat(first(limits, low).limit()).isEqualTo(400);
    LongToIntFunction high = n -> channel(n) == SlotPlan.V ? 201 : 500;
    assertThat(first(limits, high).crossedTickMicros()).isEqualTo(35 * 125 / 2);
  }

  /** As the C test: 1.5 A for 300 ms from 0.5 s on, then 0.3 A; again where {@code second} says. */
  private static LongToIntFunction motor(long second) {
    return n -> {
      boolean starts = n >= 8000 && n < 12_800 || second != 0 && n >= second && n < second + 4800;
      return switch (channel(n)) {
        case SlotPlan.J -> n < 8000 ? 77 : 768;
        case SlotPlan.I -> starts ? 123 : n < 8000 ? 2 : 25;
        default -> channel(n) >= SlotPlan.R1 ? 512 : 0;
      };
    };
  }

  private static TripLimits.Builder withStart(int counts, int millis) {
    return TripLimits.builder().inrush(60, 400).running(41, 0).start(counts, millis);
  }

  private static TripDecision starts(TripLimits limits, LongToIntFunction counts) {
    return first(new TripRules(limits, NO_ZERO, 0), counts, n -> false, 240_000);
  }

  private static long at(long conversion) {
    return SlotPlan.microsOf(conversion);
  }

  @Test
  void oneStartIsAllowedWheneverItComes() {
    assertThat(starts(withStart(164, 400).build(), motor(0))).isNull();
    TripDecision none = starts(withStart(0, 400).build(), motor(0));
    assertThat(none.cause()).isEqualTo(TripCause.RUNNING);
    assertThat(none.crossedTickMicros()).isEqualTo(at(8000));
    assertThat(starts(withStart(164, 0).build(), motor(0)).cause()).isEqualTo(TripCause.RUNNING);
  }

  @Test
  void startThatLastsTooLongAndOneOverItsLimitTrip() {
    TripDecision slow = starts(withStart(164, 200).build(), motor(0));
    assertThat(slow.cause()).isEqualTo(TripCause.RUNNING);
    assertThat(slow.crossedTickMicros()).isEqualTo(at(8008 + 4 * 801));
    TripDecision over = starts(withStart(122, 400).build(), motor(0));
    assertThat(over.cause()).isEqualTo(TripCause.START);
    assertThat(over.crossedTickMicros()).isEqualTo(at(8012));
    assertThat(over.limit()).isEqualTo(122);
  }

  @Test
  void secondStartWithinFiveSecondsTrips() {
    long over = 8008 + 4 * 1601;
    TripDecision second = starts(withStart(164, 400).build(), motor(over + 4 * 19_000));
    assertThat(second.cause()).isEqualTo(TripCause.RUNNING);
    assertThat(second.crossedTickMicros()).isEqualTo(at(over + 4 * 19_000));
    assertThat(starts(withStart(164, 400).build(), motor(over + 4 * 20_100))).isNull();
  }

  @Test
  void fineLimitLetsAStartBeginAndHeatCountsThroughIt() {
    TripLimits fine = withStart(164, 2).running(0, 700).build();
    TripDecision running = starts(fine, motor(0));
    assertThat(running.channel()).isEqualTo(SlotPlan.J);
    assertThat(running.crossedTickMicros()).isEqualTo(at(8115));
    TripDecision heat = starts(withStart(164, 400).i2t(100 * 13_448, 41).build(), motor(0));
    assertThat(heat.cause()).isEqualTo(TripCause.I2T);
    assertThat(heat.crossedTickMicros()).isEqualTo(at(8000 + 4 * 100));
  }

  @Test
  void fineInputFarUpWithTheCoarseAtRestIsADeadInput() {
    LongToIntFunction dead = n -> channel(n) == SlotPlan.J ? (n < 1600 ? 100 : 1023) : 19;
    TripLimits limits = TripLimits.builder().rail(1, new RailWindow(0, 1023)).build();
    TripDecision found = first(limits, dead);
    assertThat(found.cause()).isEqualTo(TripCause.SELF_TEST);
    assertThat(found.channel()).isEqualTo(SlotPlan.J);
    assertThat(found.crossedTickMicros()).isEqualTo(at(1619));
    assertThat(first(limits, n -> channel(n) == SlotPlan.J ? 1023 : 20)).isNull();
  }

  @Test
  void limitsOnCurrentRestWhileTheLimiterHoldsASurge() {
    TripLimits limits = TripLimits.builder().inrush(60, 100).confirmCurrent(1, 1).build();
    TripRules rules = new TripRules(limits, NO_ZERO, 0);
    rules.held(true);
    assertThat(rules.conversion(0, 900)).isNull();
    rules.held(false);
    assertThat(rules.conversion(4, 900).cause()).isEqualTo(TripCause.INRUSH);
  }
}
