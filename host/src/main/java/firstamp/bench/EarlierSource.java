package firstamp.bench;

import firstamp.log.LogException;
import firstamp.study.EarlierPowerUp;

/** Finds the power-up to be drawn behind; may take its time. */
@FunctionalInterface
public interface EarlierSource {
  /**
   * Finds it.
   *
   * @return null = there is none
   * @throws LogException the log cannot be read
   */
  EarlierPowerUp find() throws LogException;
}
