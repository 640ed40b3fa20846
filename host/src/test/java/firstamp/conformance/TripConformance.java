package firstamp.conformance;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.samples.Channel;
import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.codes.RefusalReason;
import firstamp.protocol.codes.Resend;
import firstamp.protocol.codes.StreamKind;
import firstamp.protocol.codes.SwitchCause;
import firstamp.protocol.codes.TripCause;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.RailWindow;
import firstamp.protocol.values.TripLimits;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What every probe does alike when a limit is passed. */
abstract class TripConformance extends StreamConformance {
  @ParameterizedTest
  @CsvSource({
    "supply_A, 0.1, 1.5, RUNNING, 0, 128, 87",
    "supply_A, 0.1, 0.2, RUNNING, 1, 517, 405",
    "rail1_V, 8, 12, OVER_VOLTAGE, 3, 819, 768",
    "rail2_V, 0, -6, OVER_VOLTAGE, 4, 358, 400",
    "supply_A, 0.1, 11, HARD_SHORT, 255, 906, 0",
  })
  void trips(
      String column, double low, double high, TripCause cause, int channel, int value, int limit)
      throws Exception {
    // A rail without a column is an open clip at full scale: its window must not be set.
    // A hard short of a millisecond comes after the running limit, if there is one.
    TripLimits.Builder builder =
        cause == TripCause.HARD_SHORT ? TripLimits.builder() : limits().running(82, 400);
    if (channel == Channel.R1.ordinal()) {
      builder.rail(1, new RailWindow(0, limit));
    } else if (channel == Channel.R2.ordinal()) {
      builder.rail(2, new RailWindow(limit, 1023));
    }
    TripLimits limits = builder.build();
    on(
        step(column, low, high),
        PLAIN,
        host -> tripsWith(host, limits, cause, channel, value, limit));
  }

  private void tripsWith(
      Host host, TripLimits limits, TripCause cause, int channel, int value, int limit)
      throws Exception {
    switchOn(host, limits, true);
    long closed = host.tickOf(ProbeState.ON);
    host.awaitState(ProbeState.TRIPPED, 5);
    host.until(() -> host.all(ProbeMessage.Capture.class).size() >= 16, 3, "capture");
    ProbeMessage.Trip trip = host.last(ProbeMessage.Trip.class).orElseThrow();
    assertThat(trip.cause()).isEqualTo(cause);
    assertThat(trip.channel()).isEqualTo(channel);
    assertThat(trip.value()).isEqualTo(value);
    assertThat(trip.limit()).isEqualTo(limit);
    assertThat(trip.limitedConversions()).isEqualTo(cause == TripCause.HARD_SHORT ? 17 : 0);
    // Crossed at 300 ms; the slowest takes three conversions of V, 2 ms apart.
    assertThat(host.tickOf(ProbeState.TRIPPED) - closed).isBetween(299_999L, 306_200L);
    assertThat(host.last(ProbeMessage.SwitchChanged.class).orElseThrow().by())
        .isEqualTo(SwitchCause.TRIP);
    wholeCapture(host, trip.number());
    assertThat(host.conversionsMissing).isZero();
  }

  private static void wholeCapture(Host host, int number) {
    Set<Integer> places = new HashSet<>();
    for (ProbeMessage.Capture block : host.all(ProbeMessage.Capture.class)) {
      assertThat(block.number()).isEqualTo(number);
      places.add(block.first());
    }
    assertThat(places).hasSize(16);
  }

  /**
   * A short that is there when the switch closes, or comes before the first conversion is over
   * (62.5 us): it is dated at the closing, not at the look before it.
   */
  @ParameterizedTest
  @CsvSource({
    "0, false",
    "2, true",
    "5, false",
    "8, true",
    "12, false",
    "18, true",
    "25, false",
    "33, true",
    "42, false",
    "50, true",
  })
  void aShortBeforeTheFirstSlotIsOverIsDatedAtTheClosing(int offsetMicros, boolean skip)
      throws Exception {
    double at = offsetMicros / 1e6;
    String waveform =
        offsetMicros == 0
            ? "t_s,supply_V,supply_A\n0,0.5,12\n60,0.5,12\n"
            : String.format(
                java.util.Locale.ROOT,
                "t_s,supply_V,supply_A\n0,0.5,0.1\n%.7f,0.5,0.1\n%.7f,0.5,12\n60,0.5,12\n",
                at,
                at + 1e-7);
    on(
        waveform,
        PLAIN,
        host -> {
          host.open(StreamKind.RAW);
          assertThat(host.ask(new HostMessage.SetLimits(TripLimits.builder().build()))).isNull();
          assertThat(host.ask(new HostMessage.SwitchOn(Host.look(skip)))).isNull();
          host.awaitState(ProbeState.TRIPPED, 10);
          host.until(() -> host.last(ProbeMessage.Trip.class).isPresent(), 1, "trip");
          ProbeMessage.Trip trip = host.last(ProbeMessage.Trip.class).orElseThrow();
          assertThat(trip.cause()).isEqualTo(TripCause.HARD_SHORT);
          long closed = host.tickOf(ProbeState.ON);
          assertThat(closed % 10_000).as("closed on a 10 ms boundary").isZero();
          assertThat(closed - host.tickOf(ProbeMessage.LookResult.class))
              .as("closing at the boundary 6 to 16 ms after the look's end")
              .isBetween(1L, 18_000L);
          assertThat(host.tickOf(ProbeState.TRIPPED) - closed)
              .as("a millisecond without a look; with one, at V's first conversion after 3 ms")
              .isBetween(skip ? 1000L : 4187L, (skip ? 1000L : 4187L) + 130);
          assertThat(trip.crossedTickMicros() - closed)
              .as("dated at the closing: within one conversion of it")
              .isBetween(0L, offsetMicros + 65L);
          assertThat(host.state()).isEqualTo(ProbeState.TRIPPED);
        });
  }

  @Test
  void inrushLimitActsInItsTimeAndAStuckMotorPassesTheBudgetLater() throws Exception {
    String surge = "t_s,supply_V,supply_A\n0,12,0.1\n0.03,12,0.1\n0.030001,12,6\n60,12,6\n";
    on(
        surge,
        PLAIN,
        host -> {
          switchOn(host, limits().build(), true);
          host.awaitState(ProbeState.TRIPPED, 5);
          host.runFor(0.1);
          assertThat(host.last(ProbeMessage.Trip.class).orElseThrow().cause())
              .isEqualTo(TripCause.INRUSH);
        });
    // 1.5 A: 123 counts against 41: 13 448 a conversion. A start of 100 ms is 400 of them.
    TripLimits budget = TripLimits.builder().i2t(7_000_000, 41).build();
    String starts = "t_s,supply_V,supply_A\n0,12,1.5\n0.1,12,1.5\n0.100001,12,0.2\n60,12,0.2\n";
    on(
        starts,
        PLAIN,
        host -> {
          switchOn(host, budget, true);
          host.runFor(0.6);
          assertThat(host.state()).isEqualTo(ProbeState.ON);
        });
    on(
        "t_s,supply_V,supply_A\n0,12,1.5\n60,12,1.5\n",
        PLAIN,
        host -> {
          switchOn(host, budget, true);
          host.awaitState(ProbeState.TRIPPED, 5);
          host.runFor(0.1);
          ProbeMessage.Trip trip = host.last(ProbeMessage.Trip.class).orElseThrow();
          assertThat(trip.cause()).isEqualTo(TripCause.I2T);
          // The first sum over 7 000 000.
          assertThat(trip.i2tCounts2()).isEqualTo(521 * 13_448L);
        });
  }

  @Test
  void meanAndPeakOfPulsedCurrent() throws Exception {
    on(
        step("supply_A", 0.1, 1.5),
        PLAIN,
        host -> {
          switchOn(host, TripLimits.builder().mean(16 * 82, 0).build(), true);
          host.awaitState(ProbeState.TRIPPED, 5);
          host.runFor(0.1);
          ProbeMessage.Trip trip = host.last(ProbeMessage.Trip.class).orElseThrow();
          assertThat(trip.cause()).isEqualTo(TripCause.MEAN);
          // Before 13 counts, after 128, seven readings of ten: over 87, all from 5 on.
          assertThat(trip.value()).isEqualTo(16 * (13 * 3 + 128 * 7) / 10);
        });
    on(
        step("supply_A", 0.1, 1.5),
        PLAIN,
        host -> {
          switchOn(host, TripLimits.builder().peak(100).build(), true);
          host.awaitState(ProbeState.TRIPPED, 5);
          host.runFor(0.1);
          assertThat(host.last(ProbeMessage.Trip.class).orElseThrow().cause())
              .isEqualTo(TripCause.PEAK);
        });
  }

  @Test
  void voltsOverTheLimitTripOnV() throws Exception {
    on(
        "t_s,supply_V\n0,12\n0.3,12\n0.300001,15\n60,15\n",
        PLAIN,
        host -> tripsWith(host, limits().build(), TripCause.OVER_VOLTAGE, 2, 261, 227));
  }

  @Test
  void silentHostOpensTheSwitch() throws Exception {
    on(
        STEADY,
        PLAIN,
        host -> {
          switchOn(host, limits().silenceMillis(300).build(), true);
          host.runFor(0.6);
          assertThat(host.state()).isEqualTo(ProbeState.ON);
          host.fallSilent();
          // On a busy machine it comes late here; how long it took is judged in the probe's time.
          host.awaitState(ProbeState.TRIPPED, 10);
          host.until(() -> host.last(ProbeMessage.Trip.class).isPresent(), 10, "trip");
          ProbeMessage.Trip trip = host.last(ProbeMessage.Trip.class).orElseThrow();
          assertThat(trip.cause()).isEqualTo(TripCause.HOST_SILENCE);
          long silentMicros =
              (host.tickOf(ProbeState.TRIPPED) - trip.crossedTickMicros()) & 0xFFFF_FFFFL;
          assertThat(silentMicros)
              .as("from the last valid frame to the pin low")
              .isBetween(300_000L, 310_000L);
        });
  }

  @Test
  void latchIsKeptUntilItsNumberIsGivenAndTheCaptureComesAgain() throws Exception {
    on(
        step("supply_A", 0.1, 1.5),
        PLAIN,
        host -> {
          tripsWith(host, limits().build(), TripCause.RUNNING, 0, 128, 87);
          int number = host.last(ProbeMessage.Trip.class).orElseThrow().number();
          assertThat(host.ask(new HostMessage.SwitchOn(Host.look(true))).reason())
              .isIn(RefusalReason.TRIP_LATCHED, RefusalReason.WRONG_STATE);
          ProbeMessage.Refused wrong =
              host.ask(new HostMessage.Restore(number + 1, Host.look(true)));
          assertThat(wrong.reason()).isEqualTo(RefusalReason.WRONG_NUMBER);
          assertThat(wrong.detail()).isEqualTo(number);
          host.runFor(0.4);
          assertThat(host.all(ProbeMessage.Trip.class))
              .as("told at once, after 50 and after 200 ms")
              .hasSize(3)
              .containsOnly(host.last(ProbeMessage.Trip.class).orElseThrow());
          List<ProbeMessage.Capture> first = host.all(ProbeMessage.Capture.class);
          assertThat(host.ask(new HostMessage.SendAgain(Resend.CAPTURE, number))).isNull();
          host.until(
              () -> host.all(ProbeMessage.Capture.class).size() == first.size() + 16,
              2,
              "capture again");
          List<ProbeMessage.Capture> all = host.all(ProbeMessage.Capture.class);
          assertThat(all.subList(first.size(), all.size())).containsAll(first);
          assertThat(host.ask(new HostMessage.SendAgain(Resend.TRIP, number + 1)).reason())
              .isEqualTo(RefusalReason.NOTHING_THERE);
          assertThat(host.ask(new HostMessage.Restore(number, Host.look(true)))).isNull();
          host.awaitState(ProbeState.ON, 5);
          host.awaitState(ProbeState.TRIPPED, 5);
          host.runFor(0.1);
          assertThat(host.ask(new HostMessage.ClearTrip(number)).reason())
              .isEqualTo(RefusalReason.WRONG_NUMBER);
          assertThat(host.ask(new HostMessage.ClearTrip(number + 1))).isNull();
          host.awaitState(ProbeState.OFF, 1);
          assertThat(host.hello().latchedTrip()).isZero();
        });
  }
}
