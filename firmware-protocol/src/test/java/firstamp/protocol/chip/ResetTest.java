package firstamp.protocol.chip;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.protocol.HostMessage;
import firstamp.protocol.LookParameters;
import firstamp.protocol.ProbeMessage;
import firstamp.protocol.ProbeState;
import firstamp.protocol.TripLimits;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A reset, a brown-out or a hang at any moment leaves the switch off until it is switched on. */
@Tag("chip")
class ResetTest {
  private static final LookParameters NO_LOOK = new LookParameters(true, 300, 563, 5, 51, 61, 236);
  private static final String WAVEFORM = "t_s,supply_V,supply_A\n0,12,0.1\n";
  private static final int WATCHDOG_MILLIS = 300;

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"--reset-at-ms", "--brownout-at-ms", "--hang-at-ms"})
  void opensTheSwitchAtSeventeenMoments(String fault) throws Exception {
    for (int i = 0; i < 17; i++) {
      faultAt(fault, 500 + 400 * new Random(i).nextDouble());
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"--reset-at-ms", "--brownout-at-ms", "--hang-at-ms"})
  @Tag("full")
  void opensTheSwitchAtAThousandMoments(String fault) throws Exception {
    for (int i = 0; i < 334; i++) {
      faultAt(fault, 500 + 400 * new Random(i).nextDouble());
    }
  }

  private void faultAt(String fault, double millis) throws Exception {
    String moment = String.format(Locale.ROOT, "%.4f", millis);
    List<String> options = List.of("--flat-out", fault, moment, "--for-ms", "1400");
    try (ChipProbe probe = ChipProbe.start(folder, WAVEFORM, options)) {
      ProbeMessage.Hello before = probe.hello();
      probe.command(new HostMessage.SetLimits(TripLimits.builder().silenceMillis(10_000).build()));
      probe.send(new HostMessage.SwitchOn(NO_LOOK));
      ProbeMessage.Hello after =
          probe.await(ProbeMessage.Hello.class, h -> h.bootId() != before.bootId());
      assertThat(after.state()).as("state after %s %s", fault, moment).isEqualTo(ProbeState.OFF);
      probe.awaitEnd(60_000);
      ChipEvents events = probe.finish();
      double latest = millis + (fault.equals("--hang-at-ms") ? WATCHDOG_MILLIS : 0.001);
      for (ChipEvents.Event event : events.events()) {
        double atMillis = event.cycle() / ChipEvents.CYCLES_PER_MICROSECOND / 1000;
        if (!event.what().equals("off")) {
          assertThat(atMillis).as("%s after %s %s", event, fault, moment).isLessThan(latest);
        }
      }
      assertThat(events.lastSupply()).as("%s %s: %s", fault, moment, events).isIn("off", "");
      assertThat(events.last("off").orElse(0) / ChipEvents.CYCLES_PER_MICROSECOND / 1000)
          .as("pin low after %s %s", fault, moment)
          .isLessThanOrEqualTo(latest);
    }
  }
}
