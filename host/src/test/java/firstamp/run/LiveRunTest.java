package firstamp.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import firstamp.emulate.EmulatedProbe;
import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Scenarios;
import firstamp.emulate.box.BoxKind;
import firstamp.emulate.line.Faults;
import firstamp.emulate.line.Pace;
import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.Summary;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ChannelScale;
import firstamp.pipeline.Chain;
import firstamp.pipeline.ProbeSettings;
import firstamp.pipeline.RunRefused;
import firstamp.pipeline.Summaries;
import firstamp.run.calibration.CalibrationTalk;
import firstamp.run.questions.ArmGate;
import firstamp.sheet.Defaults;
import firstamp.sheet.SheetReader;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** A live run against the emulated probe with something wrong on the line or in the probe. */
class LiveRunTest {
  private final CountingRecorder kept = new CountingRecorder();
  private final HeardAlarms heard = new HeardAlarms();

  private static JobSheet sheet(String scenario) {
    try {
      return Defaults.fill(SheetReader.parse(scenario, Scenarios.sheetJson(scenario)).sheet());
    } catch (firstamp.sheet.SheetException bad) {
      throw new AssertionError(bad);
    }
  }

  private static RunSetup setup(JobSheet effective, long forMicros) {
    return new RunSetup(
        effective,
        new ProbeSettings(effective),
        null,
        true,
        forMicros,
        0,
        false,
        2_000_000,
        false,
        ArmGate.alwaysOpen());
  }

  private LiveRun run(String scenario, Faults faults, long forMicros) {
    return runOver(scenario, forMicros, () -> {}, faults);
  }

  private static Summary summary(LiveRun run, Chain chain) {
    return Summaries.of(null, "u", chain, run.conversions(), null, false);
  }

  @Test
  void damagedBytesAreGapsAndNothingIsInvented() throws Exception {
    LiveRun run = run("healthy", Faults.NONE.withLine(2e-5, 2e-5, 2e-5), 2_000_000);
    Chain chain = run.run();
    Summary summary = summary(run, chain);
    assertThat(summary.ended()).isEqualTo("time");
    assertThat(summary.conversions().gaps()).isPositive();
    assertThat(summary.conversions().lost()).isPositive();
    assertThat(kept.conversions).isEqualTo(summary.conversions().received());
    assertThat(kept.gapConversions).isEqualTo(summary.conversions().lost());
    assertThat(kept.outOfOrder).isZero();
  }

  @Test
  void restartedProbeEndsTheRunWithTheSwitchOff() throws Exception {
    LiveRun run = run("healthy", Faults.NONE.withResetAt(6.0), 60_000_000);
    Chain chain = run.run();
    assertThat(chain.ended()).isEqualTo("probe-reset");
    assertThat(chain.offBy()).isEqualTo(OffCause.START);
    assertThat(chain.trip()).isNull();
    assertThat(heard.links).contains(ProbeEvent.LinkState.PROBE_RESTARTED);
    assertThat(kept.outOfOrder).as("time goes on after the restart").isZero();
  }

  @Test
  void restartWhoseHelloIsLostIsFoundByTheClockThatBeganAnew() throws Exception {
    Faults helloLost = Faults.NONE.withResetAt(6.0).withSilence(6.0, 0.3);
    Chain chain = run("healthy", helloLost, 60_000_000).run();
    assertThat(chain.ended()).isEqualTo("probe-reset");
    assertThat(chain.offBy()).isEqualTo(OffCause.START);
    assertThat(heard.links).contains(ProbeEvent.LinkState.PROBE_RESTARTED);
    assertThat(kept.outOfOrder).as("time goes on after the restart").isZero();
  }

  @Test
  void pulledCableIsSaidAndEndsTheRun() throws Exception {
    LiveRun run = run("healthy", Faults.NONE.withCableOutAt(6.0), 60_000_000);
    Chain chain = run.run();
    assertThat(chain.ended()).isEqualTo("link-lost");
    assertThat(heard.links).startsWith(ProbeEvent.LinkState.LOST);
    assertThat(heard.rules).contains("probe-silent");
  }

  @Test
  void lineThatComesBackDumbIsGivenUp() throws Exception {
    Faults dumb = Faults.NONE.withSilence(0, 1e9);
    LiveRun run = runOver("healthy", 60_000_000, () -> {}, Faults.NONE.withCableOutAt(6.0), dumb);
    assertThat(run.run().ended()).isEqualTo("link-lost");
    assertThat(heard.links).containsExactly(ProbeEvent.LinkState.LOST);
  }

  @Test
  void lineThatComesBackWithWhatIsNotUnderstoodCanBeLeft() throws Exception {
    LiveRun[] run = new LiveRun[1];
    run[0] =
        runOver(
            "healthy",
            60_000_000,
            () -> run[0].off(OffCause.SIGNAL),
            Faults.NONE.withCableOutAt(6.0),
            Faults.NONE.withProtocolVersion(2));
    assertThat(run[0].run().ended()).isEqualTo("link-lost");
    assertThat(heard.links).containsExactly(ProbeEvent.LinkState.LOST);
  }

  /** One line after the other; behind the last one nothing can be opened. */
  private LiveRun runOver(String scenario, long forMicros, Runnable atLast, Faults... lines) {
    Deque<Faults> left = new ArrayDeque<>(List.of(lines));
    return new LiveRun(
        setup(sheet(scenario), forMicros),
        () -> {
          if (left.isEmpty()) {
            throw new IOException("unplugged");
          }
          Faults next = left.remove();
          if (left.isEmpty()) {
            atLast.run();
          }
          return Scenarios.open(scenario, ProbeOptions.of(1, Pace.MAX).withFaults(next));
        },
        kept,
        heard,
        new RunProgress() {});
  }

  @Test
  void foreignVersionIsNamed() {
    assertThatThrownBy(() -> run("healthy", Faults.NONE.withProtocolVersion(1), 1_000_000).run())
        .isInstanceOfSatisfying(
            RunRefused.class,
            refused -> assertThat(refused.kind()).isEqualTo(RunRefused.Kind.ARMING))
        .hasMessageContaining("speaks version 1")
        .hasMessageContaining("this program version 2")
        .hasMessageContaining("probe.hex");
  }

  /** The switch comes on with its gate volts although its pin is low: refused, in words. */
  @Test
  void limiterThatDoesNotHoldKeepsTheSwitchOpen() throws Exception {
    Chain chain = run("healthy", Faults.NONE.withFailedLimiter(1), 1_000_000).run();
    assertThat(chain.ended()).isEqualTo("look");
    assertThat(chain.offBy()).isEqualTo(OffCause.LOOK);
    assertThat(heard.rules).contains("switch-failed");
    assertThat(chain.alarms().toString())
        .contains("The limiter of the probe box does not hold its switch. The switch stayed open.");
  }

  @Test
  void damagedCalibrationRefusesArming() {
    assertThatThrownBy(() -> run("healthy", Faults.NONE.withDamagedCalibration(), 1_000_000).run())
        .isInstanceOfSatisfying(
            RunRefused.class,
            refused -> assertThat(refused.kind()).isEqualTo(RunRefused.Kind.ARMING))
        .hasMessageContaining("calibrat");
  }

  @Test
  void offBeforeArmingEndsQuietly() throws Exception {
    LiveRun run = run("healthy", Faults.NONE, 60_000_000);
    run.off(OffCause.USER);
    assertThatThrownBy(run::run).isInstanceOf(RunRefused.class);
  }

  @Test
  void markAndSeenGoThroughTheStream() throws Exception {
    LiveRun run = run("no-draw", Faults.NONE, 3_000_000);
    heard.onAlarm =
        () -> {
          run.mark("W3 went to P7");
          run.acknowledge("", 0);
        };
    run.run();
    assertThat(kept.events)
        .anyMatch(
            event ->
                event instanceof ProbeEvent.Marked mark && mark.text().equals("W3 went to P7"));
    assertThat(kept.events).anyMatch(ProbeEvent.Acknowledged.class::isInstance);
    assertThat(heard.states).contains("acknowledged");
  }

  @Test
  void whatIsSaidBeforeTheProbeHasAnsweredIsKept() throws Exception {
    LiveRun run = run("healthy", Faults.NONE, 1_000_000);
    run.mark("typed at once");
    run.happened(new Happening.SetChanged("C7 lifted"));
    run.run();
    assertThat(kept.events.subList(0, 2))
        .extracting(
            event -> event instanceof ProbeEvent.Marked mark ? mark.text() : event.toString())
        .first()
        .isEqualTo("typed at once");
    assertThat(kept.events)
        .anyMatch(
            event ->
                event instanceof ProbeEvent.Happened happened
                    && happened.what().equals(new Happening.SetChanged("C7 lifted")));
  }

  @Test
  void logThatFailsIsAnAlarmAndWatchingGoesOn() throws Exception {
    kept.failFromConversion = 60_000;
    LiveRun run = run("healthy", Faults.NONE, 3_000_000);
    Chain chain = run.run();
    assertThat(chain.ended()).isEqualTo("time");
    assertThat(heard.rules).contains("not-logging");
  }

  @Test
  void theProbesOwnUncertaintiesAreRead() throws Exception {
    // The zeros that are written are those of ideal parts: another box would have lost its own.
    ProbeOptions ideal = ProbeOptions.of(1, Pace.MAX).withBox(BoxKind.IDEAL);
    EmulatedProbe probe = Scenarios.open("healthy", ideal);
    Calibration written = calibrated(0.00123, 0.25);
    new CalibrationTalk(probe).write(written);
    JobSheet effective = sheet("healthy");
    LiveRun run =
        new LiveRun(setup(effective, 500_000L), () -> probe, kept, heard, new RunProgress() {});
    Chain chain = run.run();
    assertThat(chain.ended()).isEqualTo("time");
    assertThat(run.hello().calibration()).isEqualTo(written);
    assertThat(run.hello().calibration().gainUncertainty().get(Channel.J)).isEqualTo(0.00123);
  }

  private static Calibration calibrated(double gain, double zeroCounts) {
    Map<Channel, Double> gains = new EnumMap<>(Channel.class);
    Map<Channel, Double> zeros = new EnumMap<>(Channel.class);
    Map<Channel, ChannelScale> scales = new EnumMap<>(Channel.class);
    for (Channel channel : Channel.values()) {
      firstamp.protocol.values.ChannelScale real =
          firstamp.protocol.values.ChannelScale.nominal().get(channel.ordinal());
      scales.put(
          channel, new ChannelScale(real.zero(), real.full(), Calibration.basePerUnit(channel)));
      gains.put(channel, gain);
      zeros.put(channel, zeroCounts);
    }
    return new Calibration(Calibration.Kind.VALID, scales, 1_700_000_000L, gains, zeros);
  }
}
