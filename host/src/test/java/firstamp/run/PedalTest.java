package firstamp.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Waveforms;
import firstamp.emulate.line.Pace;
import firstamp.model.Alarm;
import firstamp.model.JobSheet;
import firstamp.model.OffCause;
import firstamp.model.PedalJob;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.pipeline.Chain;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ProbeSettings;
import firstamp.pipeline.RunRefused;
import firstamp.run.questions.ArmGate;
import firstamp.sheet.Defaults;
import firstamp.sheet.SheetReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The one job of the box's own pedal, in every state: a stamp of 80 ms is off, a press never
 * switches on, answers, acknowledges or continues.
 *
 * <p>Probe time of these runs: 2 s with the switch open, check and zeros from about 2.0 s, look
 * from about 2.6 s (its capacitor takes until 4 s and later), on from about 5.6 s.
 */
@Timeout(value = 30, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class PedalTest {
  private static final String SHEET =
      "{\"sheet\":1,\"set\":{\"name\":\"Set on a pedal (invented)\",\"kind\":\"other\",\"chassis\":\"negative\"},"
          + "\"supply\":{\"kind\":\"bench\",\"nominalV\":12,\"limitA\":2,\"fuseA\":1},"
          + "\"limits\":{\"inrushA\":4.5,\"inrushMs\":60,\"runningA\":1.0,\"i2tA2s\":0.5}}";
  private static final String STEADY = "t_s,supply_V,supply_A\n0,12,0.1\n60,12,0.1\n";

  @TempDir Path folder;
  private final List<ProbeEvent.SwitchChanged> switches = new ArrayList<>();
  private final List<String> marks = new ArrayList<>();
  private int acknowledged;

  private Chain run(PedalJob job, PedalJob box, ArmGate gate, String presses) throws Exception {
    Path csv = Files.writeString(folder.resolve("w.csv"), STEADY);
    String frontEnd =
        "{\"look\":{\"supplyV\":12,\"loadOhm\":200,\"loadUf\":20000},\"decayMs\":5,\"at\":["
            + presses
            + "]}";
    Path front = Files.writeString(folder.resolve("f.json"), frontEnd);
    JobSheet sheet = Defaults.fill(SheetReader.parse("sheet", SHEET).sheet());
    RunSetup setup =
        new RunSetup(
                sheet,
                new ProbeSettings(sheet),
                null,
                true,
                3_000_000L,
                0,
                false,
                2_000_000,
                false,
                gate)
            .withPedal(job);
    ProbeOptions options = ProbeOptions.of(1, Pace.MAX).withPedal(box);
    LiveRun watch =
        new LiveRun(
            setup,
            () -> Waveforms.open(csv, front, 12, options),
            new NoRecorder() {
              @Override
              public void accept(ProbeEvent event) {
                if (event instanceof ProbeEvent.SwitchChanged changed) {
                  switches.add(changed);
                } else if (event instanceof ProbeEvent.Marked marked) {
                  marks.add(marked.text());
                } else if (event instanceof ProbeEvent.Acknowledged) {
                  acknowledged++;
                }
              }
            },
            new ChainListener() {},
            new RunProgress() {});
    return watch.run();
  }

  private static String stamp(int fromMs, int forMs) {
    return "{\"ms\":"
        + fromMs
        + ",\"pedal\":true},{\"ms\":"
        + (fromMs + forMs)
        + ",\"pedal\":false}";
  }

  private long openedMicros() {
    ProbeEvent.SwitchChanged last = switches.get(switches.size() - 1);
    assertThat(last.state()).isEqualTo(SwitchState.OFF);
    return last.micros();
  }

  private boolean closed() {
    return switches.stream().anyMatch(s -> s.state() == SwitchState.ON);
  }

  private SwitchState stateAt(long micros) {
    SwitchState state = SwitchState.OFF;
    for (ProbeEvent.SwitchChanged changed : switches) {
      state = changed.micros() <= micros ? changed.state() : state;
    }
    return state;
  }

  /** The practice box opens by itself; the host's off finds it open. */
  @ParameterizedTest
  @CsvSource({"2300, CHECK", "3200, LOOK", "6500, ON"})
  void aStampOf80MillisecondsIsOffAtOnce(int atMs, SwitchState state) throws Exception {
    Chain chain = run(PedalJob.OFF, PedalJob.OFF, ArmGate.alwaysOpen(), stamp(atMs, 80));
    assertThat(stateAt(atMs * 1000L)).isEqualTo(state);
    assertThat(chain.offBy()).isEqualTo(OffCause.PEDAL);
    // Looked at every 2 ms, settled over two looks.
    assertThat(openedMicros() - atMs * 1000L).isBetween(2_000L, 4_100L);
    nothingElseCameOfIt(chain);
    assertThat(closed()).isEqualTo(state == SwitchState.ON);
  }

  /** What the box did before does not matter: the host tells it its job for this run. */
  @ParameterizedTest
  @CsvSource({"2300, CHECK", "3200, LOOK", "6500, ON"})
  void theJobIsToldToTheBox(int atMs, SwitchState state) throws Exception {
    Chain chain = run(PedalJob.OFF, PedalJob.MARK, ArmGate.alwaysOpen(), stamp(atMs, 80));
    assertThat(stateAt(atMs * 1000L)).isEqualTo(state);
    assertThat(chain.offBy()).isEqualTo(OffCause.PEDAL);
    assertThat(openedMicros() - atMs * 1000L).isBetween(2_000L, 4_100L);
    nothingElseCameOfIt(chain);
    assertThat(closed()).isEqualTo(state == SwitchState.ON);
  }

  private void nothingElseCameOfIt(Chain chain) {
    assertThat(marks).isEmpty();
    assertThat(acknowledged).isZero();
    assertThat(chain.ended()).isEqualTo("user-off");
    assertThat(chain.alarms()).extracting(Alarm::rule).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"OFF", "MARK"})
  void anyPressStopsTheCountdown(PedalJob job) throws Exception {
    Chain chain = run(job, PedalJob.MARK, ArmGate.alwaysOpen(), stamp(1500, 80));
    assertThat(chain.ended()).isEqualTo("user-off");
    assertThat(switches).noneMatch(s -> s.state() != SwitchState.OFF);
    assertThat(marks).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"OFF", "HOLD_TO_RUN", "MARK"})
  void noPressAnswersAQuestion(PedalJob job) throws Exception {
    ArmGate gate = new ArmGate(List.of("floating-supply"));
    Chain chain = run(job, PedalJob.MARK, gate, stamp(1500, 80) + "," + stamp(2500, 80));
    assertThat(gate.open()).isFalse();
    assertThat(chain.ended()).isEqualTo("user-off");
    assertThat(closed()).isFalse();
  }

  @Test
  void aMarkPedalMarksAndIsOffWhenHeld() throws Exception {
    Chain chain =
        run(
            PedalJob.MARK,
            PedalJob.MARK,
            ArmGate.alwaysOpen(),
            stamp(6500, 80) + ",{\"ms\":7000,\"pedal\":true}");
    assertThat(marks).containsExactly("");
    assertThat(chain.offBy()).isEqualTo(OffCause.PEDAL);
    assertThat(openedMicros()).isBetween(7_600_000L, 7_610_000L);
  }

  @Test
  void holdToRunIsOnlyOnWhileTheFootIsDown() throws Exception {
    Chain chain =
        run(
            PedalJob.HOLD_TO_RUN,
            PedalJob.HOLD_TO_RUN,
            ArmGate.alwaysOpen(),
            "{\"ms\":1000,\"pedal\":true},{\"ms\":7000,\"pedal\":false}");
    assertThat(closed()).isTrue();
    assertThat(chain.offBy()).isEqualTo(OffCause.PEDAL);
    assertThat(openedMicros()).isBetween(7_002_000L, 7_004_100L);
    assertThat(marks).isEmpty();
  }

  @Test
  void holdToRunDoesNotCloseWithoutAFootAndOpensInTheLookWhenItComesUp() throws Exception {
    Chain chain =
        run(
            PedalJob.HOLD_TO_RUN,
            PedalJob.HOLD_TO_RUN,
            ArmGate.alwaysOpen(),
            "{\"ms\":1000,\"pedal\":true},{\"ms\":3200,\"pedal\":false},"
                + "{\"ms\":3300,\"pedal\":true}");
    assertThat(stateAt(3_200_000)).isEqualTo(SwitchState.LOOK);
    assertThat(chain.offBy()).isEqualTo(OffCause.PEDAL);
    assertThat(closed()).isFalse();
  }

  @Test
  void holdToRunIsRefusedWithoutAFoot() {
    assertThatThrownBy(
            () -> run(PedalJob.HOLD_TO_RUN, PedalJob.HOLD_TO_RUN, ArmGate.alwaysOpen(), ""))
        .isInstanceOf(RunRefused.class)
        .hasMessageContaining("foot");
  }
}
