package firstamp.protocol.chip;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.codes.StreamKind;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.LookParameters;
import firstamp.protocol.values.TripLimits;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A reset, a brown-out or a hang at any moment leaves the switch off until it is switched on. */
@Tag("chip")
class ResetTest {
  private static final LookParameters LOOK = new LookParameters(false, 300, 563, 5, 51, 61, 236);
  private static final String WAVEFORM = "t_s,supply_V,supply_A\n0,12,0.1\n";
  private static final int WATCHDOG_MILLIS = 150;
  private static final Set<String> FAULTS = Set.of("reset", "brownout", "hang");

  @TempDir Path folder;

  /** From the command on: check to 0.2 s, look to 0.5 s, then the switch is on. */
  private static final int LATEST_FAULT_MILLIS = 900;

  @ParameterizedTest
  @ValueSource(strings = {"--reset-at-ms", "--brownout-at-ms", "--hang-at-ms"})
  void opensTheSwitchAtSeventeenMoments(String fault) throws Exception {
    faultAtEach(fault, 17);
  }

  @ParameterizedTest
  @ValueSource(strings = {"--reset-at-ms", "--brownout-at-ms", "--hang-at-ms"})
  @Tag("full")
  void opensTheSwitchAtAThousandMoments(String fault) throws Exception {
    faultAtEach(fault, 334);
  }

  /**
   * The raw stream fills nearly half of the line's time: about half of the resets cut a frame off.
   */
  @Test
  void saysHelloAlthoughItCutAFrameOff() throws Exception {
    Random random = new Random(4);
    int cut = 0;
    for (int i = 0; i < 20; i++) {
      String moment = String.format(Locale.ROOT, "%.4f", 20 + 20 * random.nextDouble());
      List<String> options =
          List.of("--flat-out", "--from-switch-on", "--reset-at-ms", moment, "--for-ms", "240");
      try (ChipProbe probe = ChipProbe.start(folder, WAVEFORM, options)) {
        ProbeMessage.Hello before = probe.hello();
        probe.command(
            new HostMessage.SetLimits(TripLimits.builder().silenceMillis(10_000).build()));
        probe.command(new HostMessage.StreamRequest(StreamKind.RAW));
        probe.send(new HostMessage.SwitchOn(LOOK));
        probe.await(ProbeMessage.Hello.class, h -> h.bootId() != before.bootId());
        cut += probe.record().rejected() > 0 ? 1 : 0;
      }
    }
    System.out.printf("reset while the raw stream runs: %d of 20 cut a frame off%n", cut);
    assertThat(cut).as("resets in the middle of a frame").isPositive();
  }

  /** Moments spread over check, look and on, each at a random place of its share of the time. */
  private void faultAtEach(String fault, int times) throws Exception {
    Random random = new Random(times);
    int whileOn = 0;
    int whileLooking = 0;
    for (int i = 0; i < times; i++) {
      double millis = LATEST_FAULT_MILLIS * (i + random.nextDouble()) / times;
      String before = faultAt(fault, millis);
      whileOn += before.equals("on") ? 1 : 0;
      whileLooking += before.equals("look") ? 1 : 0;
    }
    System.out.printf(
        "%s: %d faults, %d while on, %d while looking%n", fault, times, whileOn, whileLooking);
    assertThat(whileOn).as("faults while the switch was on").isGreaterThan(times / 4);
    assertThat(whileLooking).as("faults during the look").isPositive();
  }

  /** What the switch did when the fault came: "on", "look" or "". */
  private String faultAt(String fault, double millis) throws Exception {
    String moment = String.format(Locale.ROOT, "%.4f", millis);
    String end = String.format(Locale.ROOT, "%.1f", millis + WATCHDOG_MILLIS + 200);
    List<String> options =
        List.of("--flat-out", "--from-switch-on", fault, moment, "--for-ms", end);
    try (ChipProbe probe = ChipProbe.start(folder, WAVEFORM, options)) {
      ProbeMessage.Hello before = probe.hello();
      probe.command(new HostMessage.SetLimits(TripLimits.builder().silenceMillis(10_000).build()));
      probe.send(new HostMessage.SwitchOn(LOOK));
      ProbeMessage.Hello after =
          probe.await(ProbeMessage.Hello.class, h -> h.bootId() != before.bootId());
      assertThat(after.state()).as("state after %s %s", fault, moment).isEqualTo(ProbeState.OFF);
      assertThat(probe.awaitEnd(60_000)).isTrue();
      ChipEvents events = probe.finish();
      return what(events, fault.equals("--hang-at-ms"));
    }
  }

  /** Holds that the pin went low in time and stayed so; what the switch did when the fault came. */
  private static String what(ChipEvents events, boolean hang) {
    String before = "";
    long faultCycle = -1;
    for (ChipEvents.Event event : events.events()) {
      if (FAULTS.contains(event.what())) {
        faultCycle = event.cycle();
        continue;
      }
      if (faultCycle < 0) {
        before = event.what();
        continue;
      }
      // A closing that was already due may still come from an interrupt while the program hangs.
      assertThat(event.what().equals("off") || hang).as("after the fault: %s", events).isTrue();
      double laterMillis = (event.cycle() - faultCycle) / ChipEvents.CYCLES_PER_MICROSECOND / 1000;
      assertThat(laterMillis)
          .as("after the fault: %s", events)
          .isLessThanOrEqualTo(hang ? WATCHDOG_MILLIS : 0.001);
    }
    assertThat(faultCycle).as("the fault came: %s", events).isPositive();
    assertThat(events.lastSupply()).as("%s", events).isIn(before.isEmpty() ? "" : "off", "off");
    return before;
  }
}
