package firstamp.conformance;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.samples.Channel;
import firstamp.model.samples.Reading;
import firstamp.protocol.CalibrationData;
import firstamp.protocol.ChannelScale;
import firstamp.protocol.ChannelSum;
import firstamp.protocol.Clips;
import firstamp.protocol.Frame;
import firstamp.protocol.HostMessage;
import firstamp.protocol.LineSpeed;
import firstamp.protocol.LookOutcome;
import firstamp.protocol.PedalDuty;
import firstamp.protocol.PressKind;
import firstamp.protocol.PressSource;
import firstamp.protocol.ProbeMessage;
import firstamp.protocol.ProbeState;
import firstamp.protocol.RailWindow;
import firstamp.protocol.RefusalReason;
import firstamp.protocol.Resend;
import firstamp.protocol.StreamKind;
import firstamp.protocol.SwitchCause;
import firstamp.protocol.TripCause;
import firstamp.protocol.TripLimits;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What every probe does alike: each scenario says what is behind the clips and what must come. */
abstract class ProbeConformance extends QuietConformance {
  private static final String PLAIN =
      "{\"look\":{\"supplyV\":12,\"loadOhm\":200,\"loadUf\":50},\"decayMs\":5}";

  private static TripLimits.Builder limits() {
    return TripLimits.builder().inrush(60, 369).running(82, 0).overV(222);
  }

  private static void switchOn(Host host, TripLimits limits, boolean skip) throws Exception {
    host.open(StreamKind.RAW);
    assertThat(host.ask(new HostMessage.SetLimits(limits))).isNull();
    assertThat(host.ask(new HostMessage.SwitchOn(Host.look(skip)))).isNull();
    host.awaitState(ProbeState.ON, 10);
  }

  private static String step(String column, double low, double high) {
    return String.format(
        java.util.Locale.ROOT,
        "t_s,supply_V,%s%n0,12,%s%n0.3,12,%s%n0.300001,12,%s%n60,12,%s%n".replace("%n", "\n"),
        column,
        low,
        low,
        high,
        high);
  }

  @Test
  void streamsRawWithoutLossAndReducesToTheSameIntegers() throws Exception {
    on(
        STEADY,
        PLAIN,
        host -> {
          switchOn(host, limits().build(), true);
          host.runFor(1);
          assertThat(host.ask(new HostMessage.StreamRequest(StreamKind.NONE))).isNull();
          host.send(new HostMessage.StatusRequest());
          host.runFor(0.1);
          assertThat(host.conversionsMissing).isZero();
          assertThat(host.last(ProbeMessage.Status.class).orElseThrow().conversionsSent())
              .isEqualTo(host.conversions)
              .isGreaterThan(1_000);
          sameIntegers(host);
        });
  }

  /**
   * At 250 000 baud, in the same run and on currents and volts that jump to and fro: period 10 ms,
   * so that every reading holds the same values.
   */
  @Test
  void reducesToTheSameIntegersAtHalfTheSpeed() throws Exception {
    StringBuilder moving = new StringBuilder("t_s,supply_V,supply_A,rail1_V,head_V,meter_V\n");
    String low = "11,0.12,7.1,-0.005,-1.1\n";
    String high = "13,0.31,9.3,0.006,1.7\n";
    for (int k = 0; k < 2000; k++) {
      double begin = k * 0.01;
      moving.append(String.format(java.util.Locale.ROOT, "%.6f,%s", begin, low));
      moving.append(String.format(java.util.Locale.ROOT, "%.6f,%s", begin + 0.003337, low));
      moving.append(String.format(java.util.Locale.ROOT, "%.6f,%s", begin + 0.003338, high));
      moving.append(String.format(java.util.Locale.ROOT, "%.6f,%s", begin + 0.009999, high));
    }
    on(
        moving.toString(),
        PLAIN,
        host -> {
          switchOn(host, limits().build(), true);
          host.runFor(1);
          assertThat(host.ask(new HostMessage.StreamRequest(StreamKind.NONE))).isNull();
          assertThat(host.conversionsMissing).isZero();
          host.hello(LineSpeed.SLOW);
          assertThat(host.ask(new HostMessage.StreamRequest(StreamKind.RAW)).reason())
              .isEqualTo(RefusalReason.TOO_FAST_FOR_LINE);
          sameIntegers(host);
          ProbeMessage.Reading one = host.last(ProbeMessage.Reading.class).orElseThrow();
          assertThat(one.channels().get(0).highestCounts() - one.channels().get(0).lowestCounts())
              .isGreaterThan(10);
        });
  }

  /** Each reading of the probe must be one of those that the host has made of the raw stream. */
  private static void sameIntegers(Host host) throws Exception {
    Set<List<Long>> here = new HashSet<>();
    List<Reading> readings = host.reducedHere;
    for (Reading reading : readings.subList(readings.size() - 50, readings.size())) {
      here.add(integers(reading));
    }
    assertThat(host.ask(new HostMessage.StreamRequest(StreamKind.REDUCED))).isNull();
    host.until(() -> host.all(ProbeMessage.Reading.class).size() > 40, 20, "40 readings");
    assertThat(host.ask(new HostMessage.StreamRequest(StreamKind.NONE))).isNull();
    for (ProbeMessage.Reading reading : host.all(ProbeMessage.Reading.class)) {
      assertThat(here).contains(integers(reading));
    }
  }

  private static List<Long> integers(Reading reading) {
    List<Long> all = new java.util.ArrayList<>();
    for (Channel channel : Channel.values()) {
      all.add((long) reading.sum(channel));
      all.add((long) reading.lowest(channel));
      all.add((long) reading.highest(channel));
      all.add(reading.sumOfSquares(channel));
    }
    return all;
  }

  private static List<Long> integers(ProbeMessage.Reading reading) {
    List<Long> all = new java.util.ArrayList<>();
    for (ChannelSum sum : reading.channels()) {
      all.add((long) sum.sumCounts());
      all.add((long) sum.lowestCounts());
      all.add((long) sum.highestCounts());
      all.add(sum.sumOfSquaresCounts2());
    }
    return all;
  }

  @ParameterizedTest
  @CsvSource({
    "200, 12, '', CLEAR",
    "15, 12, '', LOW",
    "1e9, 12, '', NOTHING_JOINED",
    "1, 12, '', SHORT",
    "200, 15, '', TOO_HIGH",
    "200, 2, '', NO_SUPPLY",
    "200, 12, ',\"supplyReversed\":true', REVERSED"
  })
  void looks(double ohm, double supplyV, String more, LookOutcome expected) throws Exception {
    String front =
        "{\"look\":{\"supplyV\":"
            + supplyV
            + ",\"loadOhm\":"
            + ohm
            + ",\"loadUf\":0.01}"
            + more
            + "}";
    on(
        STEADY,
        front,
        host -> {
          host.open(StreamKind.RAW);
          assertThat(host.ask(new HostMessage.SetLimits(limits().build()))).isNull();
          assertThat(host.ask(new HostMessage.LookRequest(Host.look(false)))).isNull();
          host.until(() -> host.last(ProbeMessage.LookResult.class).isPresent(), 10, "look result");
          ProbeMessage.LookResult result = host.last(ProbeMessage.LookResult.class).orElseThrow();
          assertThat(result.outcome()).isEqualTo(expected);
          assertThat(result.closes()).isFalse();
          host.awaitState(ProbeState.OFF, 1);
          assertThat(host.conversionsMissing).isZero();
        });
  }

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
          host.awaitState(ProbeState.TRIPPED, 1);
          host.runFor(0.1);
          assertThat(host.last(ProbeMessage.Trip.class).orElseThrow().cause())
              .isEqualTo(TripCause.HOST_SILENCE);
        });
  }

  @Test
  void lostChassisClipTripsAndButtonAndPedalAreAnOff() throws Exception {
    on(
        STEADY,
        PLAIN.replaceFirst("}$", ",\"at\":[{\"ms\":2500,\"chassisClip\":false}]}"),
        host -> {
          switchOn(host, limits().build(), true);
          host.awaitState(ProbeState.TRIPPED, 5);
          host.runFor(0.1);
          assertThat(host.last(ProbeMessage.Trip.class).orElseThrow().cause())
              .isEqualTo(TripCause.CHASSIS_CLIP);
        });
    on(
        STEADY,
        PLAIN.replaceFirst("}$", ",\"at\":[{\"ms\":2500,\"button\":true}]}"),
        host -> {
          switchOn(host, limits().build(), true);
          host.awaitState(ProbeState.OFF, 5);
          assertThat(host.last(ProbeMessage.SwitchChanged.class).orElseThrow().by())
              .isEqualTo(SwitchCause.BUTTON);
        });
    on(
        STEADY,
        PLAIN.replaceFirst(
            "}$",
            ",\"at\":[{\"ms\":2500,\"pedal\":true},{\"ms\":2700,\"pedal\":false},{\"ms\":3200,\"pedal\":true}]}"),
        host -> {
          host.open(StreamKind.RAW);
          assertThat(host.ask(new HostMessage.SetPedal(PedalDuty.MARK))).isNull();
          switchOn(host, limits().build(), true);
          host.awaitState(ProbeState.OFF, 6);
          assertThat(host.last(ProbeMessage.SwitchChanged.class).orElseThrow().by())
              .isEqualTo(SwitchCause.PEDAL);
          assertThat(host.all(ProbeMessage.Press.class))
              .contains(
                  new ProbeMessage.Press(PressSource.PEDAL, PressKind.TAP),
                  new ProbeMessage.Press(PressSource.PEDAL, PressKind.HELD));
        });
  }

  @Test
  void thePedalDoesItsJobByItself() throws Exception {
    String stamped = ",\"at\":[{\"ms\":2500,\"pedal\":true},{\"ms\":2600,\"pedal\":false}]}";
    on(
        STEADY,
        PLAIN.replaceFirst("}$", stamped),
        host -> {
          switchOn(host, limits().build(), true);
          host.awaitState(ProbeState.OFF, 6);
          assertThat(host.last(ProbeMessage.SwitchChanged.class).orElseThrow().by())
              .isEqualTo(SwitchCause.PEDAL);
        });
    String held = ",\"at\":[{\"ms\":20,\"pedal\":true},{\"ms\":2500,\"pedal\":false}]}";
    on(
        STEADY,
        PLAIN.replaceFirst("}$", held),
        host -> {
          host.open(StreamKind.RAW);
          assertThat(host.ask(new HostMessage.SetPedal(PedalDuty.HOLD_TO_RUN))).isNull();
          assertThat(host.ask(new HostMessage.SetLimits(limits().build()))).isNull();
          host.runFor(0.1);
          assertThat(host.ask(new HostMessage.SwitchOn(Host.look(true)))).isNull();
          host.awaitState(ProbeState.ON, 5);
          host.awaitState(ProbeState.OFF, 6);
          assertThat(host.last(ProbeMessage.SwitchChanged.class).orElseThrow().by())
              .isEqualTo(SwitchCause.PEDAL);
          assertThat(host.ask(new HostMessage.SwitchOn(Host.look(true))).reason())
              .isEqualTo(RefusalReason.FOOT_NOT_DOWN);
        });
  }

  /** Said as hosts of the first version do: the box answers, and a version can be named. */
  @Test
  void helloOfAnOlderHostIsAnswered() throws Exception {
    on(
        STEADY,
        "{}",
        host -> {
          long before = host.all(ProbeMessage.Hello.class).size();
          host.helloOfVersion(1);
          host.until(
              () -> host.all(ProbeMessage.Hello.class).size() > before, 3, "answer in version 2");
        });
  }

  @Test
  void clipsAreReadBackWhenTheHostAsks() throws Exception {
    on(
        "t_s,supply_V,supply_A,rail1_V\n0,12,0.1,8\n",
        PLAIN,
        host -> {
          host.hello();
          assertThat(host.all(ProbeMessage.Status.class))
              .noneMatch(status -> status.clips().known());
          host.send(new HostMessage.ReadClips());
          host.until(
              () -> host.all(ProbeMessage.Status.class).stream().anyMatch(s -> s.clips().known()),
              3,
              "clips");
          Clips clips = host.last(ProbeMessage.Status.class).orElseThrow().clips();
          assertThat(clips.railJoined(1)).isTrue();
          assertThat(clips.railJoined(2)).isFalse();
          assertThat(clips.railJoined(3)).isFalse();
        });
  }

  @Test
  void startIsAllowedOnceAndNotAgainWithinFiveSeconds() throws Exception {
    String starts =
        "t_s,supply_V,supply_A\n0,12,0.1\n0.5,12,0.1\n0.500001,12,2\n0.8,12,2\n0.800001,12,0.3\n"
            + "2,12,0.3\n2.000001,12,2\n2.3,12,2\n2.300001,12,0.3\n60,12,0.3\n";
    TripLimits allowed = limits().start(200, 400).build();
    on(
        starts,
        PLAIN,
        host -> {
          switchOn(host, allowed, true);
          long closed = host.tickOf(ProbeState.ON);
          host.awaitState(ProbeState.TRIPPED, 6);
          host.runFor(0.1);
          ProbeMessage.Trip trip = host.last(ProbeMessage.Trip.class).orElseThrow();
          assertThat(trip.cause()).isEqualTo(TripCause.RUNNING);
          assertThat(trip.crossedTickMicros() - closed).isBetween(1_999_900L, 2_000_300L);
        });
    on(
        starts,
        PLAIN,
        host -> {
          switchOn(host, limits().start(150, 400).build(), true);
          host.awaitState(ProbeState.TRIPPED, 6);
          host.runFor(0.1);
          assertThat(host.last(ProbeMessage.Trip.class).orElseThrow().cause())
              .isEqualTo(TripCause.START);
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
          host.runFor(0.3);
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

  @Test
  void offWorksInTheCheckInTheLookAndWhenOn() throws Exception {
    on(
        STEADY,
        "{\"look\":{\"supplyV\":12,\"loadOhm\":200,\"loadUf\":100000}}",
        host -> {
          host.open(StreamKind.RAW);
          assertThat(host.ask(new HostMessage.SwitchOn(Host.look(false))).reason())
              .isEqualTo(RefusalReason.NO_LIMITS);
          assertThat(host.ask(new HostMessage.SetLimits(limits().build()))).isNull();
          for (ProbeState at : new ProbeState[] {ProbeState.CHECK, ProbeState.LOOK}) {
            assertThat(host.ask(new HostMessage.SwitchOn(Host.look(false)))).isNull();
            host.awaitState(at, 5);
            assertThat(host.ask(new HostMessage.SwitchOff(SwitchCause.USER))).isNull();
            host.awaitState(ProbeState.OFF, 1);
          }
          assertThat(host.frames.stream().map(Frame::message))
              .noneMatch(
                  m -> m instanceof ProbeMessage.SwitchChanged c && c.state() == ProbeState.ON);
        });
    on(
        STEADY,
        PLAIN,
        host -> {
          switchOn(host, limits().build(), false);
          ProbeMessage.Refused wider =
              host.ask(new HostMessage.SetLimits(limits().running(90, 0).build()));
          assertThat(wider.reason()).isEqualTo(RefusalReason.LIMIT_GETS_WIDER);
          assertThat(wider.detail()).isEqualTo(3);
          assertThat(host.ask(new HostMessage.SwitchOff(SwitchCause.TIME))).isNull();
          host.awaitState(ProbeState.OFF, 1);
          assertThat(host.last(ProbeMessage.SwitchChanged.class).orElseThrow().by())
              .isEqualTo(SwitchCause.TIME);
        });
  }

  @Test
  void keepsACalibrationAndSaysItInEveryHello() throws Exception {
    on(
        STEADY,
        "{}",
        host -> {
          host.hello();
          List<ChannelScale> scales = new java.util.ArrayList<>(ChannelScale.nominal());
          scales.set(0, new ChannelScale(-1234, 12_600_000));
          CalibrationData data =
              new CalibrationData(
                  1_700_000_000L, scales, Collections.nCopies(8, 321), Collections.nCopies(8, 12));
          assertThat(host.ask(new HostMessage.CalibrationWrite(data))).isNull();
          host.runFor(1);
          host.send(new HostMessage.CalibrationRead());
          host.runFor(0.3);
          assertThat(host.last(ProbeMessage.Calibration.class).orElseThrow().data())
              .isEqualTo(data);
          ProbeMessage.Hello hello = host.hello();
          assertThat(hello.scales()).isEqualTo(scales);
          assertThat(hello.calibratedEpochSeconds()).isEqualTo(1_700_000_000L);
        });
  }
}
