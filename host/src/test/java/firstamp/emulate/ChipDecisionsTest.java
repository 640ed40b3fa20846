package firstamp.emulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import firstamp.model.samples.Channel;
import firstamp.model.samples.SamplePlan;
import firstamp.protocol.HostMessage;
import firstamp.protocol.LookParameters;
import firstamp.protocol.ProbeMessage;
import firstamp.protocol.ProbeState;
import firstamp.protocol.RailWindow;
import firstamp.protocol.RefusalReason;
import firstamp.protocol.Resend;
import firstamp.protocol.StreamKind;
import firstamp.protocol.SwitchCause;
import firstamp.protocol.TripCause;
import firstamp.protocol.TripLimits;
import java.io.IOException;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every cause and refusal, on waveforms whose times are written out here. */
final class ChipDecisionsTest {
  private static final LookParameters NO_LOOK = TestHost.look(12, true);
  private static final String PLAIN = "{\"look\":{\"supplyV\":12,\"loadOhm\":200,\"loadUf\":500}}";
  private static final ProbeOptions SILENT = ProbeOptions.of(1, Pace.MAX).withNoiseCounts(0);

  private static TestHost host(String csv, String frontEnd, ProbeOptions options)
      throws IOException {
    return new TestHost(
        Waveforms.open(
            WaveformFile.parse(csv, "test.csv"),
            FrontEndFile.parse(frontEnd, "test.json", 12),
            "test",
            options));
  }

  private static TestHost run(String csv, String frontEnd, TripLimits limits) throws IOException {
    TestHost host = host(csv, frontEnd, SILENT);
    host.switchOn(limits, NO_LOOK);
    host.runFor(2.5);
    return host;
  }

  private static ProbeMessage.Trip trip(TestHost host) {
    return host.last(ProbeMessage.Trip.class).orElseThrow();
  }

  /** Conversions from closing to the deciding one. */
  private static long decided(TestHost host) {
    return SamplePlan.indexAt(trip(host).decidedTickMicros())
        - SamplePlan.indexAt(host.tickOf(ProbeState.ON));
  }

  private static String step(String column, double fromS, double low, double high) {
    return "t_s,supply_V,"
        + column
        + "\n0,12,"
        + low
        + "\n"
        + fromS
        + ",12,"
        + low
        + "\n"
        + (fromS + 1e-6)
        + ",12,"
        + high
        + "\n10,12,"
        + high
        + "\n";
  }

  @Test
  void runningLimitDecidesOnTheThirdConversionAndThePinFollows45MicrosLater() throws Exception {
    // 1 s is conversion 16000, slot 0, but sampled 3 us after its start: the step is over by then.
    TestHost host = run(step("supply_A", 1.0, 0.1, 1.5), PLAIN, TestHost.limits().build());

    assertEquals(TripCause.RUNNING, trip(host).cause());
    assertEquals(16_000 + 8, decided(host));
    assertEquals(3, trip(host).confirmed());
    assertEquals(87, trip(host).limit());
    assertEquals(1_000_500 + 45, host.tickOf(ProbeState.TRIPPED) - host.tickOf(ProbeState.ON));
    // 1.5 / 12.5 * 1024 = 122.88, from 5 on and rounded: 128.
    assertEquals(128, trip(host).value());
    assertEquals(1_000_000, trip(host).crossedTickMicros() - host.tickOf(ProbeState.ON));
  }

  @Test
  void inrushLimitActsWithinTheInrushTimeOnly() throws Exception {
    TestHost surge = run(step("supply_A", 0.03, 0.1, 5), PLAIN, TestHost.limits().build());
    assertEquals(TripCause.INRUSH, trip(surge).cause());
    assertEquals(480 + 8, decided(surge));

    TestHost within = run(step("supply_A", 0.03, 0.1, 2), PLAIN, TestHost.limits().build());
    assertEquals(TripCause.RUNNING, trip(within).cause());
    // 60 ms are 240 conversions of I. Rows are one for both limits, 2 A counts from there on.
    assertEquals(960 + 8, decided(within));
  }

  @Test
  void fineChannelTripsAfterTwoOfItsConversions() throws Exception {
    TripLimits limits = TripLimits.builder().inrush(60, 369).running(0, 128).build();
    TestHost host = run(step("supply_A", 1.0, 0.01, 0.06), PLAIN, limits);

    assertEquals(TripCause.RUNNING, trip(host).cause());
    assertEquals(Channel.J.ordinal(), trip(host).channel());
    // J is slot 19: conversions 16019 and 16051.
    assertEquals(16_051, decided(host));
  }

  @Test
  void surgeHeatTripsWhenTheSumPassesTheBudget() throws Exception {
    // 123 counts against 41: 123^2 - 41^2 = 13448 a conversion; the 11th passes 140 000.
    TripLimits limits =
        TripLimits.builder().inrush(60, 1000).running(1000, 0).i2t(140_000, 41).build();
    TestHost host = run(step("supply_A", 1.0, 0.1, 1.5), PLAIN, limits);

    assertEquals(TripCause.I2T, trip(host).cause());
    assertEquals(16_000 + 40, decided(host));
    assertEquals(11 * 13_448, trip(host).i2tCounts2());
  }

  @Test
  void meanOfPulsedCurrentTripsAtTheEndOfAReading() throws Exception {
    TripLimits limits = TripLimits.builder().inrush(0, 0).mean(16 * 82, 0).build();
    TestHost host = run(step("supply_A", 1.0, 0.1, 1.5), PLAIN, limits);

    assertEquals(TripCause.MEAN, trip(host).cause());
    // Before 8 counts, after 123: (8 (10 - k) + 123 k) / 10 > 82 for k = 7 readings, slot 31 of the
    // last: conversion 16000 + 7 * 160 - 1.
    assertEquals(16_000 + 7 * 160 - 1, decided(host));
    assertEquals(16 * (13 * 3 + 128 * 7) / 10, trip(host).value()); // from 5 on
  }

  @ParameterizedTest
  @CsvSource({"rail1_V,9.0,3,16039", "rail2_V,-3.0,4,16043", "rail3_V,12.5,5,16047"})
  void railOutsideItsWindowTripsOnTheThirdConversion(
      String column, double volts, int channel, long decided) throws Exception {
    TripLimits limits =
        TripLimits.builder()
            .inrush(60, 369)
            .rail(1, new RailWindow(480, 700))
            .rail(2, new RailWindow(480, 700))
            .rail(3, new RailWindow(480, 700))
            .build();
    String csv =
        step(column, 1.0, 3, volts)
            .replace(column, "rail1_V,rail2_V,rail3_V")
            .replaceAll("(?m)^([^t,]+),12,(\\S+)$", rows(channel));
    TestHost host = run(csv, PLAIN, limits);

    assertEquals(TripCause.OVER_VOLTAGE, trip(host).cause());
    assertEquals(channel, trip(host).channel());
    assertEquals(decided, decided(host));
  }

  private static String rows(int channel) {
    return switch (channel) {
      case 3 -> "$1,12,$2,3,3";
      case 4 -> "$1,12,3,$2,3";
      default -> "$1,12,3,3,$2";
    };
  }

  @Test
  void overVoltageOfTheSupplyTrips() throws Exception {
    TestHost host =
        run("t_s,supply_V\n0,12\n1,12\n1.000001,14\n9,14\n", PLAIN, TestHost.limits().build());

    assertEquals(TripCause.OVER_VOLTAGE, trip(host).cause());
    assertEquals(Channel.V.ordinal(), trip(host).channel());
    assertEquals(16_003 + 64, decided(host));
  }

  @Test
  void hardShortOpensWhenTheLimiterHasHeldForAMillisecond() throws Exception {
    TestHost host = run(step("supply_A", 1.00002, 0.1, 12), PLAIN, TripLimits.builder().build());

    assertEquals(TripCause.HARD_SHORT, trip(host).cause());
    // 12 / 12.5 * 1024 = 983, from 5 on.
    assertEquals(988, trip(host).value());
    assertEquals(17, trip(host).limitedConversions());
    // Seen from conversion 16001 on; the seventeenth is 16017.
    assertEquals(16_017, decided(host));
    long opened = host.tickOf(ProbeState.TRIPPED) - host.tickOf(ProbeState.ON);
    assertEquals(1_001_062 + 45, opened, 1);
  }

  @Test
  void silentHostTripsAfterTheSilenceTime() throws Exception {
    TestHost host = host(step("supply_A", 5, 0.1, 0.1), PLAIN, SILENT);
    host.switchOn(TestHost.limits().silenceMillis(500).build(), NO_LOOK);
    host.fallSilent();
    double last = host.nowS();
    host.runFor(1);

    assertEquals(TripCause.HOST_SILENCE, trip(host).cause());
    double opened = host.tickOf(ProbeState.TRIPPED) / 1e6;
    assertTrue(opened > last + 0.39 && opened < last + 0.51, opened - last + " s");
  }

  @Test
  void lostChassisClipIsATripAndRefusesArming() throws Exception {
    String frontEnd = "{\"at\":[{\"ms\":1500,\"chassisClip\":false}]}";
    TestHost host = run(step("supply_A", 5, 0.1, 0.1), frontEnd, TestHost.limits().build());
    assertEquals(TripCause.CHASSIS_CLIP, trip(host).cause());
    // Off at the sixth look in a row, 2 ms apart.
    assertEquals(1_511_000, host.tickOf(ProbeState.TRIPPED), 1_100);

    host.send(new HostMessage.Restore(trip(host).number(), NO_LOOK));
    host.runFor(0.1);
    assertEquals(RefusalReason.NO_CHASSIS_CLIP, refusal(host).reason());
  }

  private static ProbeMessage.Refused refusal(TestHost host) {
    return host.last(ProbeMessage.Refused.class).orElseThrow();
  }

  @Test
  void buttonIsAnOffAndNoTrip() throws Exception {
    String frontEnd = "{\"at\":[{\"ms\":1500,\"button\":true},{\"ms\":1600,\"button\":false}]}";
    TestHost host = run(step("supply_A", 5, 0.1, 0.1), frontEnd, TestHost.limits().build());

    assertTrue(host.all(ProbeMessage.Trip.class).isEmpty());
    assertEquals(
        new ProbeMessage.SwitchChanged(ProbeState.OFF, SwitchCause.BUTTON),
        host.last(ProbeMessage.SwitchChanged.class).orElseThrow());
    assertEquals(1_502_000, host.lastTick(ProbeMessage.SwitchChanged.class), 2_000);
    assertEquals(2, host.all(ProbeMessage.Press.class).size(), "down, tap");
  }

  @Test
  void pedalIsAnOffUnlessItWasGivenAnotherJob() throws Exception {
    String frontEnd =
        "{\"at\":[{\"ms\":1000,\"pedal\":true},{\"ms\":1100,\"pedal\":false},"
            + "{\"ms\":1300,\"pedal\":true},{\"ms\":2300,\"pedal\":false}]}";
    TestHost host = run(step("supply_A", 5, 0.1, 0.1), frontEnd, TestHost.limits().build());

    assertEquals(
        new ProbeMessage.SwitchChanged(ProbeState.OFF, SwitchCause.PEDAL),
        host.last(ProbeMessage.SwitchChanged.class).orElseThrow());
    assertEquals(1_002_000, host.lastTick(ProbeMessage.SwitchChanged.class), 4_000);
  }

  @Test
  void latchNeedsItsNumberAndSurvivesAReset() throws Exception {
    TestHost host =
        host(step("supply_A", 0.5, 0.1, 1.5), PLAIN, SILENT.withFaults(Faults.NONE.withResetAt(2)));
    host.switchOn(TestHost.limits().build(), NO_LOOK);
    host.runUntil(1.5);
    int number = trip(host).number();
    assertEquals(1, number);

    host.send(new HostMessage.SwitchOn(NO_LOOK));
    host.runFor(0.1);
    assertEquals(RefusalReason.TRIP_LATCHED, refusal(host).reason());
    host.send(new HostMessage.Restore(number + 1, NO_LOOK));
    host.runFor(0.1);
    assertEquals(RefusalReason.WRONG_NUMBER, refusal(host).reason());
    host.send(new HostMessage.SendAgain(Resend.CAPTURE, number));
    host.runFor(0.1);
    assertEquals(32, host.all(ProbeMessage.Capture.class).size());

    host.runUntil(2.2);
    ProbeMessage.Hello hello = host.last(ProbeMessage.Hello.class).orElseThrow();
    assertEquals(2, hello.bootId());
    assertEquals(number, hello.latchedTrip());
    assertEquals(ProbeState.TRIPPED, hello.state());

    host.send(new HostMessage.Restore(number, NO_LOOK));
    host.runFor(0.1);
    assertEquals(RefusalReason.NO_LIMITS, refusal(host).reason());
    host.send(new HostMessage.SetLimits(TestHost.limits().build()));
    host.send(new HostMessage.Restore(number, NO_LOOK));
    host.runFor(0.6);
    assertEquals(ProbeState.ON, host.last(ProbeMessage.SwitchChanged.class).orElseThrow().state());
  }

  @Test
  void stuckSwitchIsFoundBeforeTheNextArming() throws Exception {
    TestHost host =
        host(
            step("supply_A", 9, 0.1, 0.1), PLAIN, SILENT.withFaults(Faults.NONE.withStuckSwitch()));
    host.switchOn(TestHost.limits().build(), NO_LOOK);
    host.send(new HostMessage.SwitchOff(SwitchCause.USER));
    host.runFor(0.1);
    host.send(new HostMessage.SwitchOn(NO_LOOK));
    host.runFor(1);

    ProbeMessage.LookResult result = host.last(ProbeMessage.LookResult.class).orElseThrow();
    assertEquals(firstamp.protocol.LookOutcome.CURRENT_WHILE_OFF, result.outcome());
    assertEquals(false, result.closes());
  }

  /** The switch comes on with its gate volts: nothing is joined, and the box says what is wrong. */
  @Test
  void limiterThatDoesNotHoldIsFoundBeforeAnythingIsJoined() throws Exception {
    for (LookParameters look : List.of(NO_LOOK, TestHost.look(12, false))) {
      TestHost host =
          host(
              step("supply_A", 9, 0.1, 0.1),
              PLAIN,
              SILENT.withFaults(Faults.NONE.withFailedLimiter()));
      host.open(StreamKind.RAW);
      host.send(new HostMessage.SetLimits(TestHost.limits().build()));
      host.send(new HostMessage.SwitchOn(look));
      host.runFor(4);

      ProbeMessage.LookResult result = host.last(ProbeMessage.LookResult.class).orElseThrow();
      assertEquals(firstamp.protocol.LookOutcome.LIMITER, result.outcome());
      assertEquals(false, result.closes());
      assertEquals(0, result.pairs());
      for (ProbeMessage.SwitchChanged change : host.all(ProbeMessage.SwitchChanged.class)) {
        assertEquals(true, change.state() != ProbeState.ON && change.state() != ProbeState.LOOK);
      }
      host.send(new HostMessage.StatusRequest());
      host.runFor(0.2);
      assertEquals(
          0,
          host.last(ProbeMessage.Status.class).orElseThrow().inputs().bits()
              & firstamp.protocol.Inputs.LIMITER_TESTED);
    }
  }

  @Test
  void currentAfterOpeningIsAFailedSelfTest() throws Exception {
    TestHost host =
        host(
            step("supply_A", 9, 0.1, 0.1), PLAIN, SILENT.withFaults(Faults.NONE.withStuckSwitch()));
    host.switchOn(TestHost.limits().build(), NO_LOOK);
    host.send(new HostMessage.SwitchOff(SwitchCause.USER));
    host.runFor(1);
    host.send(new HostMessage.SwitchOn(NO_LOOK));
    host.runFor(0.1);

    assertEquals(RefusalReason.SELF_TEST, refusal(host).reason());
    assertEquals(1 << 7, refusal(host).detail());
  }

  @Test
  void damagedCalibrationRefusesArming() throws Exception {
    TestHost host =
        host(
            step("supply_A", 9, 0.1, 0.1),
            PLAIN,
            SILENT.withFaults(Faults.NONE.withDamagedCalibration()));
    host.open(StreamKind.RAW);
    host.send(new HostMessage.SetLimits(TestHost.limits().build()));
    host.send(new HostMessage.SwitchOn(NO_LOOK));
    host.runFor(0.1);

    assertEquals(RefusalReason.CALIBRATION_DAMAGED, refusal(host).reason());
  }

  @Test
  void limitsNeverGetWiderWhileOn() throws Exception {
    TestHost host = host(step("supply_A", 9, 0.1, 0.1), PLAIN, SILENT);
    host.switchOn(TestHost.limits().build(), NO_LOOK);
    host.send(new HostMessage.SetLimits(TestHost.limits().running(83, 0).build()));
    host.runFor(0.1);

    assertEquals(RefusalReason.LIMIT_GETS_WIDER, refusal(host).reason());
    assertEquals(3, refusal(host).detail());
  }

  @Test
  void sameSeedSameBytes() throws Exception {
    byte[][] runs = new byte[2][];
    for (int i = 0; i < 2; i++) {
      TestHost host = new TestHost(Scenarios.open("wire-short", 7, Pace.MAX));
      host.switchOn(TestHost.limits().build(), TestHost.LOOK);
      host.runFor(1.5);
      runs[i] = host.bytes.toByteArray();
    }
    org.junit.jupiter.api.Assertions.assertArrayEquals(runs[0], runs[1]);
    assertTrue(runs[0].length > 50_000, "bytes of the run");
  }

  @Test
  void badLineLosesFramesButInventsNone() throws Exception {
    TestHost host =
        new TestHost(
            Scenarios.open(
                "healthy",
                ProbeOptions.of(3, Pace.MAX).withFaults(Faults.NONE.withLine(1e-4, 1e-4, 1e-4))));
    host.open(StreamKind.RAW);
    host.runFor(3);

    assertTrue(host.rejected.size() > 3, host.rejected.size() + " rejected");
    assertTrue(host.lostFrames > 3, host.lostFrames + " lost");
  }

  @Test
  void foreignVersionIsSeenAsSuch() throws Exception {
    TestHost host =
        new TestHost(
            Scenarios.open(
                "healthy",
                ProbeOptions.of(3, Pace.MAX).withFaults(Faults.NONE.withProtocolVersion(1))));
    host.open(StreamKind.NONE);

    assertTrue(host.frames.isEmpty());
    assertTrue(
        host.rejected.stream()
            .allMatch(r -> r.reason() == firstamp.protocol.RejectReason.WRONG_VERSION),
        host.rejected.toString());
    assertTrue(host.rejected.size() >= 2, "hello and answers");
  }

  @Test
  void pulledCableEndsTheLineWithinAFrame() throws Exception {
    TestHost host =
        new TestHost(
            Scenarios.open(
                "healthy",
                ProbeOptions.of(3, Pace.MAX).withFaults(Faults.NONE.withCableOutAt(0.5))));
    host.open(StreamKind.RAW);

    org.junit.jupiter.api.Assertions.assertThrows(IOException.class, () -> host.runFor(1));
    assertEquals(0.5, host.nowS(), 0.002);
  }

  @Test
  void shortsAtSeededTimesTripWithinAMillisecond() throws Exception {
    Random random = new Random(20);
    for (int i = 0; i < 20; i++) {
      double atS = 0.2 + random.nextDouble() * 3.8;
      TestHost host = host(step("supply_A", atS, 0.1, 3), PLAIN, SILENT);
      host.switchOn(TestHost.limits().build(), NO_LOOK);
      host.runUntil(ProbeState.TRIPPED, 5);
      double opened = (host.tickOf(ProbeState.TRIPPED) - host.tickOf(ProbeState.ON)) / 1e6;
      assertTrue(opened > atS && opened < atS + 0.001, "short at " + atS + " s opened " + opened);
    }
  }
}
