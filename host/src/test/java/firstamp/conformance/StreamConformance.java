package firstamp.conformance;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.samples.Channel;
import firstamp.model.samples.Reading;
import firstamp.protocol.codes.LineSpeed;
import firstamp.protocol.codes.LookOutcome;
import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.codes.RefusalReason;
import firstamp.protocol.codes.StreamKind;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.ChannelSum;
import firstamp.protocol.values.TripLimits;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What every probe does alike with its stream and its first look. */
abstract class StreamConformance extends QuietConformance {
  static final String PLAIN =
      "{\"look\":{\"supplyV\":12,\"loadOhm\":200,\"loadUf\":50},\"decayMs\":5}";

  static TripLimits.Builder limits() {
    return TripLimits.builder().inrush(60, 369).running(82, 0).overV(222);
  }

  static void switchOn(Host host, TripLimits limits, boolean skip) throws Exception {
    host.open(StreamKind.RAW);
    assertThat(host.ask(new HostMessage.SetLimits(limits))).isNull();
    assertThat(host.ask(new HostMessage.SwitchOn(Host.look(skip)))).isNull();
    host.awaitState(ProbeState.ON, 10);
  }

  static String step(String column, double low, double high) {
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
  static void sameIntegers(Host host) throws Exception {
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

  static List<Long> integers(Reading reading) {
    List<Long> all = new java.util.ArrayList<>();
    for (Channel channel : Channel.values()) {
      all.add((long) reading.sum(channel));
      all.add((long) reading.lowest(channel));
      all.add((long) reading.highest(channel));
      all.add(reading.sumOfSquares(channel));
    }
    return all;
  }

  static List<Long> integers(ProbeMessage.Reading reading) {
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

  /** The commands of a host of the first version do nothing; those of today's then do. */
  @Test
  void aBoxStaysOffWithAnOlderHost() throws Exception {
    on(
        STEADY,
        "{}",
        host -> {
          host.hello();
          long accepted = host.all(ProbeMessage.Accepted.class).size();
          host.sendAs(1, new HostMessage.SetLimits(limits().build()));
          host.sendAs(1, new HostMessage.SwitchOn(Host.look(false)));
          host.runFor(1.5);
          assertThat(host.all(ProbeMessage.Accepted.class)).hasSize((int) accepted);
          assertThat(host.all(ProbeMessage.SwitchChanged.class)).isEmpty();
          assertThat(host.last(ProbeMessage.Status.class).orElseThrow().state())
              .isEqualTo(ProbeState.OFF);
          host.sendAs(2, new HostMessage.SetLimits(limits().build()));
          host.until(() -> host.all(ProbeMessage.Accepted.class).size() > accepted, 3, "version 2");
        });
  }
}
