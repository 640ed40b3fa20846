package firstamp.pipeline;

import firstamp.model.limits.ProbeLimits;
import firstamp.protocol.values.LookParameters;
import firstamp.protocol.values.TripLimits;
import java.util.List;

/**
 * The settings that go to the probe before arming.
 *
 * @param limits on which it trips
 * @param look its parameters
 * @param planned every limit: what the sheet says and what is really used
 */
public record PlannedSettings(
    TripLimits limits, LookParameters look, List<ProbeLimits.Planned> planned) {
  /** Copies the list. */
  public PlannedSettings {
    planned = List.copyOf(planned);
  }
}
