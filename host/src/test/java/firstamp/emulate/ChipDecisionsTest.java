package firstamp.emulate;

import static firstamp.emulate.Decisions.NO_LOOK;
import static firstamp.emulate.Decisions.PLAIN;
import static firstamp.emulate.Decisions.SILENT;
import static firstamp.emulate.Decisions.decided;
import static firstamp.emulate.Decisions.host;
import static firstamp.emulate.Decisions.run;
import static firstamp.emulate.Decisions.step;
import static firstamp.emulate.Decisions.trip;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import firstamp.model.samples.Channel;
import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.codes.SwitchCause;
import firstamp.protocol.codes.TripCause;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.RailWindow;
import firstamp.protocol.values.TripLimits;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every trip cause, on waveforms whose times are written out here. */
final class ChipDecisionsTest {
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
