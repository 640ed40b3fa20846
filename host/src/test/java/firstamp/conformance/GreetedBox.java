package firstamp.conformance;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.samples.Channel;
import firstamp.model.samples.Reading;
import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.codes.SwitchCause;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.ChannelScale;
import firstamp.protocol.values.LookParameters;
import firstamp.protocol.values.TripLimits;
import java.util.List;

/** A started box, greeted, with its own scales. */
record GreetedBox(Host host, ProbeMessage.Hello hello) {
  double step(Channel channel) {
    return Math.abs(scale(channel).valuePerCount()) / 1e6;
  }

  ChannelScale scale(Channel channel) {
    return hello.scales().get(channel.ordinal());
  }

  int counts(Channel channel, double value) {
    return (int) (value / step(channel));
  }

  LookParameters look(boolean skip) {
    double perOhm = 256 * step(Channel.J) / step(Channel.V);
    return new LookParameters(
        skip,
        3000,
        (int) Math.round(330 * perOhm),
        (int) Math.round(3 * perOhm),
        (int) Math.round(30 * perOhm),
        counts(Channel.V, 0.3 * DrawnBoxConformance.SUPPLY_V),
        counts(Channel.V, 1.15 * DrawnBoxConformance.SUPPLY_V));
  }

  TripLimits.Builder running(double ampere) {
    return TripLimits.builder()
        .inrush(60, counts(Channel.I, 4.5))
        .running(counts(Channel.I, ampere), 0);
  }

  void switchOn(TripLimits limits, boolean skip) throws Exception {
    assertThat(host.ask(new HostMessage.SetLimits(limits))).isNull();
    assertThat(host.ask(new HostMessage.SwitchOn(look(skip)))).isNull();
    host.awaitState(ProbeState.ON, 10);
  }

  /** So many readings more of 10 ms; on a busy machine they come late. */
  void runFor(int readings) throws Exception {
    int to = host.reducedHere.size() + readings;
    host.until(() -> host.reducedHere.size() >= to, 20, readings + " readings");
  }

  ProbeMessage.LookResult looked() {
    return host.last(ProbeMessage.LookResult.class).orElseThrow();
  }

  double zero(Channel channel) {
    ProbeMessage.LookResult look = looked();
    return switch (channel) {
          case I -> look.zeroISixteenths();
          case J -> look.zeroJSixteenths();
          default -> look.zeroVSixteenths();
        }
        / 16.0;
  }

  /** Volts or amperes of the last second, zeros taken off. */
  double mean(Channel channel) {
    List<Reading> all = host.reducedHere;
    double sum = 0;
    int taken = 0;
    for (Reading reading : all.subList(all.size() - 50, all.size())) {
      sum += reading.sum(channel);
      taken += channel == Channel.I ? 40 : channel == Channel.J || channel == Channel.V ? 5 : 10;
    }
    double counts = sum / taken;
    boolean zeroed = channel == Channel.I || channel == Channel.J || channel == Channel.V;
    return zeroed ? (counts - zero(channel)) * step(channel) : scale(channel).valueAt(counts) / 1e6;
  }

  ProbeMessage.Trip trip() throws Exception {
    host.awaitState(ProbeState.TRIPPED, 10);
    host.until(() -> host.last(ProbeMessage.Trip.class).isPresent(), 1, "trip");
    assertThat(host.last(ProbeMessage.SwitchChanged.class).orElseThrow().by())
        .isEqualTo(SwitchCause.TRIP);
    return host.last(ProbeMessage.Trip.class).orElseThrow();
  }
}
