package firstamp.study;

import firstamp.log.LogException;
import firstamp.log.PowerUpReader;
import firstamp.model.Alarm;
import firstamp.model.JobSheet;
import firstamp.model.Summary;
import firstamp.model.samples.SamplePlan;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.RunRefused;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;

/**
 * Works a logged power-up through the chain for its alarms and its summary, and keeps nothing else:
 * memory does not grow with its length.
 */
public final class ReplayRules {
  private final List<Alarm> transitions = new ArrayList<>();
  private Alarm demanded;
  private Summary summary;

  /**
   * Runs on the calling thread, to the end or until told to stop.
   *
   * @param goOn asked about once per reading
   * @param share told how much is done, 0 to 1, about once per second of the power-up
   * @return false if it was stopped
   */
  public boolean run(
      PowerUpReader reader, JobSheet sheet, BooleanSupplier goOn, DoubleConsumer share)
      throws LogException {
    summary = new ReplayPowerUp(reader, sheet, collect(), pace(reader, goOn, share)).run();
    return goOn.getAsBoolean();
  }

  /**
   * The same with another sheet, up to where probe or host would have switched off.
   *
   * @throws RunRefused the probe of the record cannot watch the sheet's limits
   */
  public boolean whatIf(
      PowerUpReader reader, JobSheet other, BooleanSupplier goOn, DoubleConsumer share)
      throws LogException, RunRefused {
    summary = ReplayPowerUp.whatIf(reader, other, collect(), pace(reader, goOn, share)).run();
    return goOn.getAsBoolean();
  }

  private ReplayPowerUp.Pace pace(PowerUpReader reader, BooleanSupplier goOn, DoubleConsumer share)
      throws LogException {
    long[] extent = reader.extent();
    double length = Math.max(1, SamplePlan.microsOf(extent[1] - extent[0]));
    long begin = SamplePlan.microsOf(extent[0]);
    long[] said = {0};
    return micros -> {
      if (micros - said[0] >= 1_000_000) {
        said[0] = micros;
        share.accept(Math.min(1, (micros - begin) / length));
      }
      return goOn.getAsBoolean();
    };
  }

  private ChainListener collect() {
    return new ChainListener() {
      @Override
      public void alarm(Alarm alarm) {
        transitions.add(alarm);
      }

      @Override
      public void demandsOff(String rule) {
        if (demanded == null && !transitions.isEmpty()) {
          demanded = transitions.get(transitions.size() - 1);
        }
      }
    };
  }

  /** Every transition of every alarm. */
  public List<Alarm> transitions() {
    return List.copyOf(transitions);
  }

  /** The first alarm that demanded off; null = none did. */
  public Alarm demanded() {
    return demanded;
  }

  public Summary summary() {
    return summary;
  }
}
