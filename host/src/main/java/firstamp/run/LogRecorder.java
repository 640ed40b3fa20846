package firstamp.run;

import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.LogState;
import firstamp.log.PowerUpHeader;
import firstamp.log.PowerUpWriter;
import firstamp.model.Alarm;
import firstamp.model.ProbeEvent;
import firstamp.model.ProbeHello;
import firstamp.model.RulesVersion;
import firstamp.model.TimeSource;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import firstamp.model.text.Worded;
import firstamp.pipeline.PlannedSettings;
import firstamp.pipeline.SettingsJson;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;

/**
 * Keeps a live run in the bench log.
 *
 * <p>Called on the session thread; the log's writer reports its state from its own thread, the
 * session picks that up when it comes round.
 */
final class LogRecorder implements Recorder {
  private final BenchLog log;
  private final TimeSource time;
  private final SheetTexts sheet;
  private final RunSetup setup;
  private final String uuid;
  private final Queue<LogState> states = new ConcurrentLinkedQueue<>();
  private PowerUpWriter writer;
  private volatile boolean logging = true;
  private LogException beginFailed;
  private Worded trouble;

  LogRecorder(BenchLog log, TimeSource time, SheetTexts sheet, RunSetup setup, String uuid) {
    this.log = log;
    this.time = time;
    this.sheet = sheet;
    this.setup = setup;
    this.uuid = uuid;
  }

  @Override
  public void begin(ProbeHello hello, PlannedSettings settings) {
    try {
      writer =
          log.begin(
              new PowerUpHeader(
                  uuid,
                  setup.label(),
                  sheet.setName(),
                  time.epochMillis(),
                  setup.raw() ? PowerUpHeader.Stream.RAW : PowerUpHeader.Stream.REDUCED,
                  hello,
                  sheet.given(),
                  sheet.effective(),
                  SettingsJson.of(settings),
                  setup.roomCelsius(),
                  setup.trial() == null ? null : setup.trial().wire(),
                  setup.trial() == null ? null : setup.trial().place(),
                  RulesVersion.NOW),
              states::add);
    } catch (LogException failed) {
      // Watching continues: the rule not-logging reports it, and so does the exit code.
      beginFailed = failed;
      states.add(LogState.trouble(failed, log.file()));
    }
  }

  @Override
  public void accept(ConversionBlock block) {
    if (writer != null) {
      writer.append(block);
    }
  }

  @Override
  public void accept(Reading reading) {
    if (writer != null) {
      writer.append(reading);
    }
  }

  @Override
  public void accept(ProbeEvent event) {
    if (writer != null) {
      writer.append(event);
    }
  }

  @Override
  public void alarm(Alarm alarm) {
    if (writer != null) {
      writer.alarm(alarm);
    }
  }

  @Override
  public void awaitRoom() {
    if (writer != null) {
      writer.awaitRoom();
    }
  }

  @Override
  public void clock(double slowPpm, long points, long probeMicros) {
    if (writer != null && points > 1) {
      writer.clockFit(probeMicros, time.epochMillis(), 0, slowPpm);
    }
  }

  @Override
  public Worded stateChange() {
    for (LogState state = states.poll(); state != null; state = states.poll()) {
      if (state.logging() != logging) {
        logging = state.logging();
        trouble = logging ? null : state.text();
        return state.text();
      }
    }
    return null;
  }

  @Override
  public void settle() {
    if (writer == null) {
      return;
    }
    try {
      writer.flush();
    } catch (LogException failed) {
      // The writer has told its listener; whoever writes the end meets it again.
      return;
    }
  }

  @Override
  public Worded trouble() {
    return trouble;
  }

  @Override
  public boolean logging() {
    return logging;
  }

  /** The writer of this power-up; null if the log could not take it. */
  PowerUpWriter writer() {
    return writer;
  }

  /** Why the power-up could not be begun in the log; null = it was, or was not tried. */
  LogException beginFailed() {
    return beginFailed;
  }
}
