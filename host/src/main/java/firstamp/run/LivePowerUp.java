package firstamp.run;

import firstamp.analysis.figures.Evidence;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpWriter;
import firstamp.model.OffCause;
import firstamp.model.Summary;
import firstamp.model.TimeSource;
import firstamp.pipeline.Chain;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.RunRefused;
import firstamp.pipeline.Summaries;
import firstamp.pipeline.SummaryJson;
import firstamp.run.talk.PortOpener;
import java.io.IOException;
import java.util.UUID;

/**
 * One live power-up with its log: runs it to its end and puts the summary into the log.
 *
 * <p>{@link #run()} takes the calling thread for the session; {@link #watch()} may be told to stop
 * from any thread.
 */
public final class LivePowerUp {
  private final BenchLog log;
  private final LogRecorder recorder;
  private final LiveRun watch;
  private final String uuid = UUID.randomUUID().toString();

  /**
   * What it ended with.
   *
   * @param summary of the power-up
   * @param evidence behind it
   * @param logFailure why not everything is in the log, null = all is
   */
  public record Result(Summary summary, Evidence evidence, LogException logFailure) {}

  /**
   * A power-up that has not started.
   *
   * @param log open for writing
   * @param sheet as it is kept
   * @param setup what to do
   * @param opener of the line
   * @param time the computer's clock
   * @param listener told what the chain finds
   * @param progress told how the run gets on
   */
  public LivePowerUp(
      BenchLog log,
      SheetTexts sheet,
      RunSetup setup,
      PortOpener opener,
      TimeSource time,
      ChainListener listener,
      RunProgress progress) {
    this.log = log;
    this.recorder = new LogRecorder(log, time, sheet, setup, uuid);
    this.watch = new LiveRun(setup, opener, recorder, listener, progress);
  }

  /** The run, to stop it, to put marks, to acknowledge. */
  public LiveRun watch() {
    return watch;
  }

  /**
   * Adds an event to the log once the power-up is over.
   *
   * @throws LogException it could not be written
   */
  public void later(firstamp.model.ProbeEvent event) throws LogException {
    Integer number = number();
    if (number != null) {
      log.later(number, event);
    }
  }

  /** Unique name of the power-up. */
  public String uuid() {
    return uuid;
  }

  /** Number in the log; null before the probe has answered or where the log failed. */
  public Integer number() {
    PowerUpWriter writer = recorder.writer();
    return writer == null || writer.number() == 0 ? null : (int) writer.number();
  }

  /**
   * Runs it.
   *
   * @throws RunRefused it did not come to closing the switch; what was logged before stays
   * @throws IOException the line could not be opened
   */
  public Result run() throws RunRefused, IOException {
    boolean ended = false;
    try {
      Chain chain = watch.run();
      ended = true;
      return finish(chain);
    } finally {
      if (!ended) {
        closeQuietly();
      }
    }
  }

  private Result finish(Chain chain) {
    LogException failure = recorder.beginFailed();
    PowerUpWriter writer = recorder.writer();
    Long bytes = null;
    if (writer != null) {
      try {
        writer.flush();
        bytes = log.find(uuid).bytes();
      } catch (LogException failed) {
        failure = failed;
      }
    }
    Summary summary =
        Summaries.of(
            number(),
            uuid,
            chain,
            watch.conversions(),
            new Summary.LogPlace(log.named().toString(), bytes),
            false);
    if (writer != null) {
      try {
        writer.finish(
            SummaryJson.text(SummaryJson.of(summary)),
            summary.outcome(),
            String.valueOf(summary.ended()));
        writer.close();
        failure = null;
      } catch (LogException failed) {
        failure = failed;
      }
    }
    return new Result(summary, chain.figures().evidence(), failure);
  }

  private void closeQuietly() {
    PowerUpWriter writer = recorder.writer();
    if (writer != null) {
      try {
        writer.close();
      } catch (LogException failed) {
        // What made the run fail is on its way to the caller and comes first; the log opens without
        // an end.
        watch.off(OffCause.SIGNAL);
      }
    }
  }
}
