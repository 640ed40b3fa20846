package firstamp.pipeline;

import firstamp.model.ProbeHello;
import java.util.Set;

/** Makes the settings that go to the probe. */
@FunctionalInterface
public interface SettingsPlan {
  /**
   * For one probe.
   *
   * @param hello with its calibration
   * @param openRails inputs whose clip is joined to nothing: they must not trip
   * @throws RunRefused the sheet asks for what this probe cannot watch
   */
  PlannedSettings plan(ProbeHello hello, Set<Integer> openRails) throws RunRefused;
}
