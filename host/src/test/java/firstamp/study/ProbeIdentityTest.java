package firstamp.study;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.log.PowerUpHeader;
import firstamp.model.ProbeHello;
import firstamp.model.SwitchState;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ChannelScale;
import java.util.EnumMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ProbeIdentityTest {
  private static final Calibration BLANK = Calibration.nominal();

  private static Calibration calibrated(int fullBase, long epochSeconds) {
    Map<Channel, ChannelScale> scales = new EnumMap<>(BLANK.scales());
    scales.put(Channel.I, new ChannelScale(0, fullBase, 1e6));
    return new Calibration(
        Calibration.Kind.VALID,
        scales,
        epochSeconds,
        BLANK.gainUncertainty(),
        BLANK.offsetUncertaintyCounts());
  }

  private static PowerUpHeader header(
      long epochMs, String kind, long bootId, Calibration calibration) {
    ProbeHello hello =
        new ProbeHello(
            1, 1, 2, bootId, 1, SwitchState.OFF, 3, 0, 0, null, calibration, 10, 330, kind);
    return new PowerUpHeader(
        "u", null, "Larch", epochMs, PowerUpHeader.Stream.RAW, hello, "{}", "{}", "{}", null);
  }

  @Test
  void oneCalibrationRecordIsOneBoxWhateverThePort() {
    assertThat(
            ProbeIdentity.of(
                header(1, "probe box at tty0", 9, calibrated(12_400_000, 77)),
                header(2, "probe box at tty1", 4, calibrated(12_400_000, 77))))
        .isEqualTo(ProbeIdentity.ONE_CALIBRATION);
  }

  @Test
  void anotherCalibrationIsNotKnownToBeTheSame() {
    assertThat(
            ProbeIdentity.of(
                header(1, "probe box at tty0", 9, calibrated(12_400_000, 77)),
                header(2, "probe box at tty0", 9, calibrated(12_400_000, 78))))
        .isEqualTo(ProbeIdentity.NOT_KNOWN);
    assertThat(
            ProbeIdentity.of(
                header(1, "probe box at tty0", 9, calibrated(12_400_000, 77)),
                header(2, "probe box at tty0", 9, calibrated(12_410_000, 77))))
        .isEqualTo(ProbeIdentity.NOT_KNOWN);
  }

  @Test
  void withoutCalibrationPortFirmwareAndStartsMustAgree() {
    PowerUpHeader first = header(1000, "probe box at tty0, look only", 9, BLANK);
    assertThat(ProbeIdentity.of(first, header(2000, "probe box at tty0", 11, BLANK)))
        .isEqualTo(ProbeIdentity.TAKEN_FOR_ONE);
    assertThat(ProbeIdentity.of(first, header(2000, "probe box at tty1", 11, BLANK)))
        .isEqualTo(ProbeIdentity.NOT_KNOWN);
    // A box that has been started fewer times is another one.
    assertThat(ProbeIdentity.of(first, header(2000, "probe box at tty0", 8, BLANK)))
        .isEqualTo(ProbeIdentity.NOT_KNOWN);
    // Named the other way round the times decide.
    assertThat(ProbeIdentity.of(header(2000, "probe box at tty0", 11, BLANK), first))
        .isEqualTo(ProbeIdentity.TAKEN_FOR_ONE);
    assertThat(ProbeIdentity.NOT_KNOWN.isOne()).isFalse();
    assertThat(ProbeIdentity.TAKEN_FOR_ONE.isOne()).isTrue();
  }
}
