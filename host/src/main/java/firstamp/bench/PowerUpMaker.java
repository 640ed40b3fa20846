package firstamp.bench;

import firstamp.pipeline.ChainListener;
import firstamp.run.LivePowerUp;
import firstamp.run.RunProgress;

/** Makes the power-up once its listeners are known. */
@FunctionalInterface
public interface PowerUpMaker {
  /**
   * A power-up that tells these two.
   *
   * @param restoreTrip number of the trip after which it switches on again, 0 = none
   */
  LivePowerUp make(ChainListener listener, RunProgress progress, int restoreTrip);
}
