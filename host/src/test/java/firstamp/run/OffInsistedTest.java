package firstamp.run;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Scenarios;
import firstamp.emulate.line.Pace;
import firstamp.model.JobSheet;
import firstamp.model.OffCause;
import firstamp.model.ProbePort;
import firstamp.model.SwitchState;
import firstamp.model.TimeSource;
import firstamp.model.samples.Reading;
import firstamp.pipeline.Chain;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ProbeSettings;
import firstamp.protocol.codes.MessageType;
import firstamp.protocol.frame.FrameDecoder;
import firstamp.run.questions.ArmGate;
import firstamp.sheet.Defaults;
import firstamp.sheet.SheetReader;
import java.io.IOException;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** "Off" that does not reach the probe box is sent until the switch is open. */
@Timeout(value = 60, unit = TimeUnit.SECONDS)
class OffInsistedTest {
  private static final long LONGEST_NANOS = 30_000_000_000L;

  /** A line on which "off" is lost, or on which it pulls the cable once. */
  private static final class LossyLine implements ProbePort {
    private final ProbePort probe;
    private int lose;
    private boolean pull;
    private int offs;
    private final long begin;

    LossyLine(int lose, boolean pull) {
      this.probe = Scenarios.open("healthy", ProbeOptions.of(1, Pace.MAX));
      this.begin = probe.time().monotonicNanos();
      this.lose = lose;
      this.pull = pull;
    }

    @Override
    public int read(byte[] buffer, int timeoutMillis) throws IOException {
      if (probe.time().monotonicNanos() > begin + LONGEST_NANOS) {
        throw new AssertionError("still on 30 s later, \"off\" was sent " + offs + " times");
      }
      return probe.read(buffer, timeoutMillis);
    }

    @Override
    public void write(byte[] bytes) throws IOException {
      boolean[] off = new boolean[1];
      new FrameDecoder(frame -> off[0] |= frame.type() == MessageType.SWITCH_OFF)
          .push(bytes, 0, bytes.length);
      if (off[0]) {
        offs++;
        if (pull) {
          pull = false;
          throw new IOException("the cable was pulled");
        }
        if (lose-- > 0) {
          return;
        }
      }
      probe.write(bytes);
    }

    @Override
    public TimeSource time() {
      return probe.time();
    }

    @Override
    public String describe() {
      return probe.describe();
    }

    @Override
    public void close() {
      // The probe box stays as it is: only the line is gone.
    }
  }

  private static Chain offOver(LossyLine line) throws Exception {
    JobSheet effective =
        Defaults.fill(SheetReader.parse("healthy", Scenarios.sheetJson("healthy")).sheet());
    RunSetup setup =
        new RunSetup(
            effective,
            new ProbeSettings(effective),
            null,
            true,
            60_000_000L,
            0,
            false,
            2_000_000,
            false,
            ArmGate.alwaysOpen());
    LiveRun[] run = new LiveRun[1];
    ChainListener offAtHalfASecond =
        new ChainListener() {
          private boolean asked;

          @Override
          public void reading(Reading reading, double atMs) {
            if (!asked && atMs > 500) {
              asked = true;
              run[0].off(OffCause.USER);
            }
          }
        };
    run[0] =
        new LiveRun(setup, () -> line, new NoRecorder(), offAtHalfASecond, new RunProgress() {});
    return run[0].run();
  }

  @Test
  void offIsSentAgainForAsLongAsTheSwitchIsClosed() throws Exception {
    LossyLine line = new LossyLine(14, false);
    Chain chain = offOver(line);
    assertThat(line.offs).as("more often than any other command is sent").isEqualTo(15);
    assertThat(chain.state()).isEqualTo(SwitchState.OFF);
    assertThat(chain.ended()).isEqualTo("user-off");
  }

  @Test
  void offIsNotForgottenOverALineThatWasGoneMeanwhile() throws Exception {
    LossyLine line = new LossyLine(0, true);
    Chain chain = offOver(line);
    assertThat(line.offs).isGreaterThan(1);
    assertThat(chain.state()).isEqualTo(SwitchState.OFF);
    assertThat(chain.offBy()).isEqualTo(OffCause.USER);
  }
}
