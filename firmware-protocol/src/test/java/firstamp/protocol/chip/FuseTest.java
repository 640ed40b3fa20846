package firstamp.protocol.chip;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.protocol.codes.RefusalReason;
import firstamp.protocol.codes.SelfTestFault;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.Fuses;
import firstamp.protocol.values.LookParameters;
import firstamp.protocol.values.TripLimits;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The chip reads its own fuse bits: with others than the guide's it says so and does not arm. Bits
 * of the ATmega328P's data sheet, table "Fuse Low/High/Extended Byte", from memory: extended FD is
 * a brown-out at 2.7 V, FF none; high D7 leaves the watchdog to the program, C6 starts a boot
 * loader; low 7F divides the clock by 8.
 */
@Tag("chip")
class FuseTest {
  private static final String WAVEFORM = "t_s,supply_V,supply_A\n0,12,0.1\n";

  @TempDir Path folder;

  @Test
  void thoseOfTheGuidePass() throws Exception {
    try (ChipProbe probe = ChipProbe.start(folder, WAVEFORM, List.of("--flat-out"))) {
      ProbeMessage.Hello hello = probe.hello();
      assertThat(hello.fuses()).isEqualTo(Fuses.RIGHT);
      assertThat(hello.selfTest().bits()).isZero();
    }
  }

  @ParameterizedTest
  @CsvSource({"FF,C7,FD", "FF,C7,FF", "FF,D7,FC", "FF,C6,FC", "7F,C7,FC"})
  void othersRefuseArming(String low, String high, String extended) throws Exception {
    List<String> options = List.of("--flat-out", "--fuses", low + "," + high + "," + extended);
    try (ChipProbe probe = ChipProbe.start(folder, WAVEFORM, options)) {
      ProbeMessage.Hello hello = probe.hello();
      assertThat(hello.fuses())
          .isEqualTo(
              new Fuses(
                  Integer.parseInt(low, 16),
                  Integer.parseInt(high, 16),
                  Integer.parseInt(extended, 16)));
      assertThat(hello.selfTest().faults()).containsExactly(SelfTestFault.FUSES);
      probe.command(new HostMessage.SetLimits(TripLimits.builder().build()));
      probe.send(new HostMessage.SwitchOn(new LookParameters(true, 300, 563, 5, 51, 61, 236)));
      ProbeMessage.Refused refused = probe.await(ProbeMessage.Refused.class, r -> true);
      assertThat(refused.reason()).isEqualTo(RefusalReason.SELF_TEST);
    }
  }
}
