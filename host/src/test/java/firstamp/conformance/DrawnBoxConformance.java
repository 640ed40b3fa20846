package firstamp.conformance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import firstamp.emulate.box.BoxKind;
import firstamp.model.samples.Channel;
import firstamp.protocol.codes.CalibrationState;
import firstamp.protocol.codes.LookOutcome;
import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.codes.StreamKind;
import firstamp.protocol.codes.TripCause;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.RailWindow;
import firstamp.protocol.values.TripLimits;
import java.io.IOException;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What boxes as the parts allow them do alike: calibrated ones, and new ones that were never
 * calibrated. Limits and look are set by what the box says of itself, as a host does it; what must
 * come is given in volts and amperes, within what such a box states (1 % and two counts calibrated,
 * 5 % and two counts new).
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
abstract class DrawnBoxConformance {
  static final double SUPPLY_V = 12;
  private static final double STEADY_A = 0.12;
  private static final double RAIL_V = 8;

  abstract Target.Started start(String waveform, BoxKind kind, long seed, Path folder)
      throws IOException;

  /** Kind and seed of the boxes. */
  abstract Stream<Arguments> boxes();

  static Stream<Arguments> both(long first, long last) {
    return Stream.iterate(first, seed -> seed <= last, seed -> seed + 1)
        .flatMap(
            seed -> Stream.of(BoxKind.SOLDERED, BoxKind.NEW).map(kind -> Arguments.of(kind, seed)));
  }

  /** A scenario. */
  private interface Script {
    void run(GreetedBox bench) throws Exception;
  }

  private void on(BoxKind kind, long seed, Path folder, String waveform, Script script)
      throws Exception {
    try (Target.Started started = start(waveform, kind, seed, folder)) {
      Host host = new Host(started.port());
      ProbeMessage.Hello hello = host.hello();
      assertThat(hello.calibration())
          .isEqualTo(kind == BoxKind.NEW ? CalibrationState.BLANK : CalibrationState.VALID);
      assertThat(hello.selfTest().bits()).isZero();
      host.open(StreamKind.RAW);
      script.run(new GreetedBox(host, hello));
      assertThat(host.rejected).as("frames that could not be read").isZero();
      assertThat(host.lostFrames).as("frames lost").isZero();
      assertThat(host.conversionsMissing).isZero();
    }
  }

  private static double share(BoxKind kind) {
    return kind == BoxKind.NEW ? 0.05 : 0.01;
  }

  private static String step(String column, double low, double high) {
    return String.format(
        java.util.Locale.ROOT,
        "t_s,supply_V,%s\n0,12,%s\n0.3,12,%s\n0.300001,12,%s\n60,12,%s\n",
        column,
        low,
        low,
        high,
        high);
  }

  /** Its zeros stand where it says, the look finds the 1000 ohm, and figures are what is there. */
  @ParameterizedTest
  @MethodSource("boxes")
  void armsAndItsFiguresAreWhatItStates(BoxKind kind, long seed, @TempDir Path folder)
      throws Exception {
    on(
        kind,
        seed,
        folder,
        QuietConformance.STEADY,
        bench -> {
          bench.switchOn(bench.running(1).build(), false);
          assertThat(bench.looked().outcome()).isEqualTo(LookOutcome.CLEAR);
          if (kind == BoxKind.SOLDERED) {
            for (Channel channel : new Channel[] {Channel.I, Channel.J, Channel.V}) {
              assertThat(bench.zero(channel))
                  .as("zero of " + channel)
                  .isCloseTo(bench.scale(channel).countsAt(0), within(3.0));
            }
          }
          double ohm =
              (bench.looked().endVSixteenths() / 16.0 - bench.zero(Channel.V))
                  * bench.step(Channel.V)
                  / ((bench.looked().endJSixteenths() / 16.0 - bench.zero(Channel.J))
                      * bench.step(Channel.J));
          assertThat(ohm).as("look").isCloseTo(1000, within(1000 * (share(kind) * 2 + 0.08)));
          bench.runFor(110);
          near(kind, bench, Channel.J, STEADY_A);
          near(kind, bench, Channel.I, STEADY_A);
          near(kind, bench, Channel.V, SUPPLY_V);
          near(kind, bench, Channel.R1, RAIL_V);
          assertThat(bench.host().state()).isEqualTo(ProbeState.ON);
        });
  }

  private static void near(BoxKind kind, GreetedBox bench, Channel channel, double value) {
    assertThat(bench.mean(channel))
        .as("%s", channel)
        .isCloseTo(value, within(share(kind) * value + 2 * bench.step(channel)));
  }

  /** 1 A: 0.9 A is let, 1.5 A is not, on a box that may be 5 % and two counts beside it. */
  @ParameterizedTest
  @MethodSource("boxes")
  void tripsOnTheRunningLimitAndNotUnderIt(BoxKind kind, long seed, @TempDir Path folder)
      throws Exception {
    on(
        kind,
        seed,
        folder,
        step("supply_A", 0.1, 0.9),
        bench -> {
          bench.switchOn(bench.running(1).build(), true);
          bench.runFor(60);
          assertThat(bench.host().state()).isEqualTo(ProbeState.ON);
        });
    on(
        kind,
        seed,
        folder,
        step("supply_A", 0.1, 1.5),
        bench -> {
          bench.switchOn(bench.running(1).build(), true);
          ProbeMessage.Trip trip = bench.trip();
          assertThat(trip.cause()).isEqualTo(TripCause.RUNNING);
          assertThat((trip.value() - bench.zero(Channel.I)) * bench.step(Channel.I))
              .isCloseTo(1.5, within(1.5 * share(kind) + 4 * bench.step(Channel.I)));
        });
  }

  @ParameterizedTest
  @MethodSource("boxes")
  void tripsOnAHardShortAfterAMillisecondOfLimiting(BoxKind kind, long seed, @TempDir Path folder)
      throws Exception {
    on(
        kind,
        seed,
        folder,
        step("supply_A", 0.1, 11),
        bench -> {
          bench.switchOn(TripLimits.builder().build(), true);
          ProbeMessage.Trip trip = bench.trip();
          assertThat(trip.cause()).isEqualTo(TripCause.HARD_SHORT);
          assertThat(trip.limitedConversions()).isEqualTo(17);
        });
  }

  /** 10 V on a rail of 8 V: 9 V is let, 12 V is not. */
  @ParameterizedTest
  @MethodSource("boxes")
  void tripsOnARailOverItsVolts(BoxKind kind, long seed, @TempDir Path folder) throws Exception {
    on(
        kind,
        seed,
        folder,
        step("rail1_V", 8, 9),
        bench -> {
          bench.switchOn(rail(bench), true);
          bench.runFor(60);
          assertThat(bench.host().state()).isEqualTo(ProbeState.ON);
        });
    on(
        kind,
        seed,
        folder,
        step("rail1_V", 8, 12),
        bench -> {
          bench.switchOn(rail(bench), true);
          ProbeMessage.Trip trip = bench.trip();
          assertThat(trip.cause()).isEqualTo(TripCause.OVER_VOLTAGE);
          assertThat(trip.channel()).isEqualTo(Channel.R1.ordinal());
        });
  }

  private static TripLimits rail(GreetedBox bench) {
    int limit = bench.scale(Channel.R1).countsAt(10e6);
    return bench.running(1).rail(1, new RailWindow(0, limit)).build();
  }

  /** A short that is there when the switch closes is seen within the first millisecond. */
  @ParameterizedTest
  @MethodSource("boxes")
  void aShortAtClosingIsCut(BoxKind kind, long seed, @TempDir Path folder) throws Exception {
    on(
        kind,
        seed,
        folder,
        "t_s,supply_V,supply_A\n0,0.5,12\n60,0.5,12\n",
        bench -> {
          assertThat(bench.host().ask(new HostMessage.SetLimits(TripLimits.builder().build())))
              .isNull();
          assertThat(bench.host().ask(new HostMessage.SwitchOn(bench.look(true)))).isNull();
          assertThat(bench.trip().cause()).isEqualTo(TripCause.HARD_SHORT);
          long open = bench.host().tickOf(ProbeState.TRIPPED) - bench.host().tickOf(ProbeState.ON);
          assertThat(open).isBetween(1000L, 1130L);
        });
  }
}
