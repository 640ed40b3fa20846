package firstamp.cli.command;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.OutputFile;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.emulate.EmulatedProbe;
import firstamp.emulate.ProbeOptions;
import firstamp.emulate.Scenarios;
import firstamp.emulate.Waveforms;
import firstamp.emulate.box.BoxKind;
import firstamp.emulate.line.Pace;
import firstamp.emulate.wave.WaveformException;
import firstamp.model.JobSheet;
import firstamp.model.PedalJob;
import firstamp.model.text.Explained;
import firstamp.model.text.FailureWords;
import firstamp.model.text.Worded;
import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import picocli.CommandLine.Option;

/**
 * The practice box of a demo: what is behind it, an invented set or a waveform file, and how exact
 * it is.
 */
final class DemoBox {
  private final Speech speech;

  DemoBox(Speech speech) {
    this.speech = speech;
  }

  @Option(
      names = "--waveform",
      paramLabel = "CSV",
      description = "a waveform file instead of the invented set; needs --sheet")
  private Path waveform;

  @Option(
      names = "--front-end",
      paramLabel = "FILE",
      description = "ranges, look and inputs behind the waveform (JSON)")
  private Path frontEnd;

  @Option(
      names = "--save-waveform",
      paramLabel = "CSV",
      description = "write what the set did as a waveform file")
  private Path saveWaveform;

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description = "of the box and its noise (default ${DEFAULT-VALUE})")
  private long seed;

  @Option(
      names = "--new-box",
      description = "a box that was never calibrated, instead of a calibrated one")
  private boolean newBox;

  @Option(names = "--ideal", description = "an exactly nominal box: no tolerances, no offsets")
  private boolean ideal;

  @Option(
      names = "--noise-counts",
      paramLabel = "X",
      defaultValue = "0.7",
      description = "noise of the converter, counts rms (default ${DEFAULT-VALUE})")
  private double noiseCounts;

  private volatile EmulatedProbe opened;

  boolean hasWaveform() {
    return waveform != null;
  }

  /** Seed of the box and its noise. */
  long seed() {
    return seed;
  }

  /** Whether it is to be two boxes at a time. */
  boolean contradicts() {
    return newBox && ideal || frontEnd != null && (newBox || ideal);
  }

  /** Whether its switch has closed. */
  boolean closedOnce() {
    return opened != null && opened.closedOnce();
  }

  /** What is behind the waveform is read before anything is begun, for an exit code of its own. */
  void checkFiles(JobSheet effective) throws CliFailure {
    if (saveWaveform != null) {
      OutputFile.checkFolder(saveWaveform);
    }
    if (waveform == null) {
      return;
    }
    try {
      Waveforms.open(
              waveform, frontEnd, effective.supply().nominalV(), ProbeOptions.of(seed, Pace.MAX))
          .close();
    } catch (WaveformException bad) {
      throw new CliFailure(ExitCode.BAD_DATA, Explained.of(bad), bad);
    } catch (NoSuchFileException missing) {
      throw new CliFailure(
          ExitCode.NO_INPUT,
          Said.of(
              "demo.there-is-no-file-expected",
              missing.getFile(),
              Said.of(
                  missing.getFile().equals(waveform.toString())
                      ? "demo.waveform-file"
                      : "demo.front-end-file")),
          missing);
    } catch (IOException unreadable) {
      throw new CliFailure(
          ExitCode.NO_INPUT,
          Said.of("demo.the-files-of-the-waveform", FailureWords.worded(unreadable)),
          unreadable);
    }
  }

  void saveWaveform() throws CliFailure {
    if (saveWaveform == null || opened == null) {
      return;
    }
    try {
      opened.saveWaveform(saveWaveform);
    } catch (IOException failed) {
      throw OutputFile.failure(saveWaveform, failed);
    }
  }

  private BoxKind kind() {
    return ideal ? BoxKind.IDEAL : newBox ? BoxKind.NEW : BoxKind.SOLDERED;
  }

  /** Which box it is: its figures hang on it. */
  void say() {
    Worded which =
        frontEnd != null
            ? Said.of("demo.box.front-end")
            : ideal
                ? Said.of("demo.box.ideal")
                : Said.of(newBox ? "demo.box.new" : "demo.box.calibrated", seed);
    speech.err(Said.of("demo.practice-box", which));
  }

  /** Opens it for a run. */
  EmulatedProbe open(String scenario, JobSheet effective, PedalJob pedal, Pace pace)
      throws IOException {
    ProbeOptions options =
        ProbeOptions.of(seed, pace).withNoiseCounts(noiseCounts).withPedal(pedal).withBox(kind());
    if (saveWaveform != null) {
      options = options.withRecording();
    }
    EmulatedProbe probe =
        waveform == null
            ? Scenarios.open(scenario, options)
            : Waveforms.open(waveform, frontEnd, effective.supply().nominalV(), options);
    // The practice foot holds; a front-end file says when a pedal is pressed otherwise.
    probe.foot(pedal == PedalJob.HOLD_TO_RUN && waveform == null);
    opened = probe;
    return probe;
  }
}
