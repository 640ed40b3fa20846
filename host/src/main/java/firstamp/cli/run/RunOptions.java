package firstamp.cli.run;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.cli.output.UsageProblem;
import firstamp.model.JobSheet;
import firstamp.model.PedalJob;
import firstamp.run.Soak;
import firstamp.run.StagedSheet;
import java.nio.file.Path;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;

/** Options that demo and watch share. */
public final class RunOptions {
  private final Speech speech;

  public RunOptions(Speech speech) {
    this.speech = speech;
  }

  /** The language of what is printed for people. */
  public Speech speech() {
    return speech;
  }

  @Mixin public final LookOptions look = new LookOptions();

  @Option(names = "--headless", description = "no window: lines on standard output")
  public boolean headless;

  @Option(names = "--json", description = "one JSON object per line (with --headless)")
  public boolean json;

  @Option(names = "--readings", description = "print every reading (10 ms) too")
  boolean readings;

  @Option(
      names = "--for",
      paramLabel = "TIME",
      converter = DurationConverter.class,
      description =
          "how long to stay on, counted from closing: 500ms, 10s, 1.5min, 8h; then the switch opens and rails are followed down (a headless demo without it: to the end of the waveform or the steps, else 10 s)")
  public Long forMicros;

  @Option(names = "--log", paramLabel = "FILE", description = "bench log to write to")
  public Path log;

  @Option(
      names = "--label",
      paramLabel = "TEXT",
      description = "quoted in alarms, for example \"W3 went to P7\"")
  public String label;

  @Option(
      names = "--wire",
      paramLabel = "WIRE",
      description = "the wire of unknown place that is tried in this power-up (with --place)")
  String wire;

  @Option(
      names = "--place",
      paramLabel = "PLACE",
      description = "where it is joined; the limits are then those of a trial")
  String place;

  @Option(
      names = "--countdown",
      paramLabel = "SECONDS",
      description =
          "before switching on; 0 = none (2 s are logged with the switch open in any case)")
  public Integer countdown;

  @Option(
      names = "--sound",
      negatable = true,
      description =
          "--sound: alarms are heard, also in a headless demo; --no-sound: they are not, nor those of anything started from the window later; without either, a test beep comes before switching on")
  public Boolean sound;

  @Option(
      names = "--soak",
      paramLabel = "TIME",
      converter = DurationConverter.class,
      description =
          "nobody watches: any alarm switches off, and so does the end of this time; refused without a fuse on the sheet")
  public Long soakMicros;

  /**
   * The sheet for a run that nobody watches asks for more, that for a bring-up in steps for less.
   */
  public Sheets.Ready fitted(Sheets.Ready sheet) throws CliFailure {
    if (headless && !steps && !sheet.effective().steps().isEmpty()) {
      speech.note(Said.of("run.the-sheet-brings-the-set", sheet.effective().steps().size()));
    }
    if (steps && sheet.effective().steps().isEmpty()) {
      throw new CliFailure(
          ExitCode.BAD_DATA, Said.of("run.has-no-steps-write-for", sheet.document().file()));
    }
    Sheets.Ready soaking =
        soakMicros == null ? sheet : Sheets.fitted(sheet, Soak.on(sheet.effective()));
    return steps ? Sheets.fitted(soaking, StagedSheet.on(soaking.effective())) : soaking;
  }

  @Option(
      names = "--steps",
      description =
          "staged bring-up by the steps of the sheet, each until its current has settled; ends after the last one")
  public boolean steps;

  /** What only a run without the window carries out is refused with it, not left out silently. */
  public void refuseWhatTheWindowLeavesOut(CommandSpec spec) {
    if (steps && !headless) {
      throw new UsageProblem(spec.commandLine(), Said.of("run.steps-needs-headless-in-the"));
    }
  }

  /**
   * The sheet for the probe alone: in a staged bring-up the look expects the first step's volts.
   */
  public static JobSheet forProbe(boolean steps, JobSheet effective) {
    return steps ? StagedSheet.forProbe(effective) : effective;
  }

  @Option(
      names = "--hands-in",
      description =
          "after seven seconds the running limit is lowered to just above the present current, until the switch opens")
  boolean handsIn;

  @Option(
      names = "--keys",
      description =
          "take words from standard input, one a line: off, seen, mark TEXT (a note), record on,"
              + " record off, clip NAME, clip off, changed TEXT, started TEXT, hands in, soak, usual,"
              + " mute, sound")
  boolean keys;

  @Option(
      names = "--tone",
      description = "a tone whose pitch follows the supply current, silent while it is steady")
  boolean tone;

  @Option(names = "--speak", description = "alarms in words, where the system has a speech program")
  boolean speak;

  @Option(
      names = "--pedal",
      paramLabel = "JOB",
      converter = PedalConverter.class,
      defaultValue = "off",
      description =
          "the one job of the probe box's pedal: off (any press switches off), mark (a tap is a mark, held is off), hold (on only while the foot is down; practice box only, see the guide)")
  public PedalJob pedal;

  @Option(
      names = "--room",
      paramLabel = "CELSIUS",
      description =
          "room temperature, kept with the power-up: germanium parts leak more in a warm room")
  Double roomCelsius;
}
