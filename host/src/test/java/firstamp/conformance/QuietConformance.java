package firstamp.conformance;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.protocol.codes.MessageType;
import firstamp.protocol.codes.PedalDuty;
import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.codes.RefusalReason;
import firstamp.protocol.codes.StreamKind;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.Fuses;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Scenarios that need nothing behind the clips and never close the switch: also for a board. */
abstract class QuietConformance {
  static final String STEADY = "t_s,supply_V,supply_A,rail1_V\n0,12,0.12,8\n60,12,0.12,8\n";

  /**
   * Offset, width, value, reason (1 = bad-value, 2 = limit-too-fine), field: wire-format.md,
   * Limits.
   */
  private static final long[][] WRONG = {
    {0, 2, 10_001, 1, 1},
    {2, 2, 3, 2, 2},
    {2, 2, 1021, 1, 2},
    {4, 2, 1, 2, 3},
    {4, 2, 1021, 1, 3},
    {6, 2, 3, 2, 4},
    {6, 2, 1001, 1, 4},
    {8, 2, 2, 2, 5},
    {8, 2, 65_535, 1, 5},
    {10, 2, 63, 2, 6},
    {10, 2, 16_321, 1, 6},
    {12, 2, 1, 2, 7},
    {12, 2, 16_001, 1, 7},
    {14, 1, 0, 1, 8},
    {14, 1, 9, 1, 8},
    {15, 1, 0, 1, 9},
    {15, 1, 9, 1, 9},
    {16, 1, 0, 1, 10},
    {17, 1, 255, 1, 11},
    {18, 4, 2_000_000_001L, 1, 12},
    {22, 2, 1021, 1, 13},
    {24, 2, 1024, 1, 14},
    {28, 2, 1024, 1, 14},
    {30, 2, 1024, 1, 15},
    {34, 2, 65_535, 1, 15},
    {36, 2, 1023, 1, 16},
    {38, 2, 199, 1, 17},
    {38, 2, 10_001, 1, 17},
    {40, 2, 1001, 1, 18},
    {42, 2, 3, 2, 19},
    {42, 2, 1021, 1, 19},
    {44, 2, 1001, 1, 20},
    {46, 1, 1, 1, 21},
    {47, 1, 128, 1, 21},
  };

  @TempDir Path folder;

  abstract Target target();

  /** A scenario: a fresh probe and a host. */
  interface Script {
    void run(Host host) throws Exception;
  }

  void on(String waveform, String frontEnd, Script script) throws Exception {
    try (Target.Started started = target().start(waveform, frontEnd, folder)) {
      Host host = new Host(started.port());
      script.run(host);
      assertThat(host.rejected).as("frames that could not be read").isZero();
      assertThat(host.lostFrames).as("frames lost").isZero();
    }
  }

  private static ByteBuffer validLimits() {
    ByteBuffer bytes = ByteBuffer.allocate(48).order(ByteOrder.LITTLE_ENDIAN);
    bytes.put(14, (byte) 3).put(15, (byte) 2).put(16, (byte) 3).put(17, (byte) 3);
    bytes.putShort(30, (short) 1023).putShort(32, (short) 1023).putShort(34, (short) 1023);
    return bytes.putShort(38, (short) 2000);
  }

  @Test
  void saysWhoItIs() throws Exception {
    on(
        STEADY,
        "{}",
        host -> {
          ProbeMessage.Hello hello = host.hello();
          assertThat(hello.state()).isEqualTo(ProbeState.OFF);
          assertThat(hello.bootId()).isPositive();
          assertThat(hello.scales()).hasSize(8);
          assertThat(hello.hardShortMilliamps()).isEqualTo(10_000);
          assertThat(hello.lookMilliohms()).isEqualTo(330_000);
          assertThat(hello.pedal()).isEqualTo(PedalDuty.OFF);
          assertThat(hello.fuses()).isEqualTo(Fuses.RIGHT);
          assertThat(hello.selfTest().bits()).isZero();
        });
  }

  @Test
  void refusesEveryLimitOutOfItsRangeAndKeepsNoneOfIt() throws Exception {
    on(
        STEADY,
        "{}",
        host -> {
          host.hello();
          for (long[] wrong : WRONG) {
            ByteBuffer payload = validLimits();
            for (int k = 0; k < wrong[1]; k++) {
              payload.put((int) wrong[0] + k, (byte) (wrong[2] >> 8 * k));
            }
            ProbeMessage.Refused refused =
                host.askUnchecked(MessageType.SET_LIMITS, payload.array());
            assertThat(refused).as("offset %d value %d", wrong[0], wrong[2]).isNotNull();
            assertThat(refused.reason())
                .as("offset %d value %d", wrong[0], wrong[2])
                .isEqualTo(wrong[3] == 1 ? RefusalReason.BAD_VALUE : RefusalReason.LIMIT_TOO_FINE);
            assertThat(refused.detail())
                .as("offset %d value %d", wrong[0], wrong[2])
                .isEqualTo((int) wrong[4]);
          }
          if (startsFresh()) {
            assertThat(host.ask(new HostMessage.SwitchOn(Host.look(true))).reason())
                .isEqualTo(RefusalReason.NO_LIMITS);
          }
          assertThat(host.askUnchecked(MessageType.SET_LIMITS, validLimits().array())).isNull();
        });
  }

  /** Whether limits were surely never set since the probe's start. */
  boolean startsFresh() {
    return true;
  }

  @Test
  void streamsRawWithoutLossWithTheSwitchOpen() throws Exception {
    on(
        STEADY,
        "{}",
        host -> {
          host.open(StreamKind.RAW);
          host.runFor(1);
          assertThat(host.ask(new HostMessage.StreamRequest(StreamKind.NONE))).isNull();
          host.send(new HostMessage.StatusRequest());
          host.runFor(0.2);
          assertThat(host.conversionsMissing).isZero();
          assertThat(host.last(ProbeMessage.Status.class).orElseThrow().conversionsSent())
              .isEqualTo(host.conversions)
              .isGreaterThan(1_000);
        });
  }
}
