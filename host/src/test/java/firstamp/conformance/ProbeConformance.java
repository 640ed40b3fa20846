package firstamp.conformance;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.protocol.codes.LookOutcome;
import firstamp.protocol.codes.PedalDuty;
import firstamp.protocol.codes.PressKind;
import firstamp.protocol.codes.PressSource;
import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.codes.RefusalReason;
import firstamp.protocol.codes.SelfTestFault;
import firstamp.protocol.codes.StreamKind;
import firstamp.protocol.codes.SwitchCause;
import firstamp.protocol.codes.TripCause;
import firstamp.protocol.frame.Frame;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.CalibrationData;
import firstamp.protocol.values.ChannelScale;
import firstamp.protocol.values.Clips;
import firstamp.protocol.values.TripLimits;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What every probe does alike with the switch: check, look, pedal, latch, off. */
abstract class ProbeConformance extends TripConformance {
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

  /**
   * A sense that does not see 12 V across the open switch would not see the limiter hold either.
   */
  @Test
  void aSupplyThatIsNotSeenAcrossTheOpenSwitchIsRefused() throws Exception {
    on(
        STEADY,
        PLAIN.replaceFirst("}$", ",\"supplyPresent\":false}"),
        host -> {
          host.open(StreamKind.RAW);
          assertThat(host.ask(new HostMessage.SetLimits(limits().build()))).isNull();
          assertThat(host.ask(new HostMessage.SwitchOn(Host.look(false)))).isNull();
          host.until(() -> host.last(ProbeMessage.LookResult.class).isPresent(), 8, "look");
          ProbeMessage.LookResult result = host.last(ProbeMessage.LookResult.class).orElseThrow();
          assertThat(result.outcome()).isEqualTo(LookOutcome.LIMITER);
          assertThat(result.closes()).isFalse();
          assertThat(host.all(ProbeMessage.SwitchChanged.class))
              .noneMatch(change -> change.state() == ProbeState.ON);
        });
  }

  /**
   * Half of the shunt is bridged: I and J show half of their amperes. 12 V and 500 ohm: the look
   * takes the supply for 9.6 V, then V shows 12.
   */
  @Test
  void halfAShuntOpensTheSwitch() throws Exception {
    on(
        "t_s,supply_V,supply_A\n0,12,0.024\n60,12,0.024\n",
        """
        {"look":{"supplyV":12,"loadOhm":500,"loadUf":1},
         "channels":{"I":{"unit":"A","atZero":-0.48828125,"atFull":24.51171875},
                     "J":{"unit":"A","atZero":-0.015625,"atFull":0.784375}},
         "kept":{"I":{"unit":"A","atZero":-0.244140625,"atFull":12.255859375,
                      "gainPercentPlusMinus":1,"zeroCountsPlusMinus":1},
                 "J":{"unit":"A","atZero":-0.0078125,"atFull":0.3921875,
                      "gainPercentPlusMinus":1,"zeroCountsPlusMinus":1}}}
        """,
        host -> {
          host.open(StreamKind.RAW);
          assertThat(host.ask(new HostMessage.SetLimits(limits().build()))).isNull();
          assertThat(host.ask(new HostMessage.SwitchOn(Host.look(false)))).isNull();
          host.awaitState(ProbeState.TRIPPED, 8);
          host.until(() -> host.last(ProbeMessage.Trip.class).isPresent(), 3, "trip");
          ProbeMessage.Trip trip = host.last(ProbeMessage.Trip.class).orElseThrow();
          assertThat(host.last(ProbeMessage.LookResult.class).orElseThrow().outcome())
              .isEqualTo(LookOutcome.CLEAR);
          assertThat(trip.cause()).isEqualTo(TripCause.SELF_TEST);
          assertThat(trip.channel()).isEqualTo(ProbeMessage.Trip.NO_CHANNEL);
          assertThat(trip.value()).isEqualTo(1 << SelfTestFault.SHUNT.code());
          // V's slot of plans 1, 2 and 3 after the closing; the main loop of the chip sees it
          // later.
          assertThat(host.tickOf(ProbeState.TRIPPED) - host.tickOf(ProbeState.ON))
              .isBetween(6_187L, 9_000L);
          assertThat(host.ask(new HostMessage.ClearTrip(trip.number()))).isNull();
          assertThat(host.ask(new HostMessage.SwitchOn(Host.look(false))).reason())
              .isEqualTo(RefusalReason.SELF_TEST);
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
          assertThat(clips.headJoined()).isFalse();
          assertThat(clips.meterJoined()).isFalse();
        });
  }

  @Test
  void clipsOfHeadAndMeterAreReadBackOneByOne() throws Exception {
    on(
        "t_s,supply_V,supply_A,head_V\n0,12,0.1,0.001\n",
        PLAIN,
        host -> {
          host.hello();
          host.send(new HostMessage.ReadClips());
          host.until(
              () -> host.all(ProbeMessage.Status.class).stream().anyMatch(s -> s.clips().known()),
              3,
              "clips");
          Clips clips = host.last(ProbeMessage.Status.class).orElseThrow().clips();
          assertThat(clips.headJoined()).isTrue();
          assertThat(clips.meterJoined()).isFalse();
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
