package firstamp.study;

import firstamp.account.Comparison;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpEntry;
import firstamp.sheet.SheetException;
import java.util.ArrayList;
import java.util.List;

/**
 * What a person is told at the end of a power-up without asking: what changed since the last one of
 * the same set, and since the known good one.
 *
 * @param against one entry per earlier power-up, empty if there is none
 */
public record Changes(List<Against> against) {
  /** Copies the list. */
  public Changes {
    against = List.copyOf(against);
  }

  /**
   * Against one earlier power-up.
   *
   * @param earlier the entry
   * @param knownGood whether it is the known good one
   * @param comparison from it to the new one
   */
  public record Against(PowerUpEntry earlier, boolean knownGood, Comparison comparison) {}

  /**
   * Reads both streams again; takes about a second per ten minutes of each.
   *
   * @param number of the new power-up in the log
   * @param setName of its set
   */
  public static Changes of(BenchLog log, long number, String setName)
      throws LogException, SheetException {
    List<Against> found = new ArrayList<>();
    List<EarlierPowerUps.Earlier> all = EarlierPowerUps.of(log, number, setName);
    if (all.isEmpty()) {
      return new Changes(found);
    }
    PowerUpStudy now = PowerUpStudy.of(log.find(Long.toString(number)));
    for (EarlierPowerUps.Earlier earlier : all) {
      PowerUpStudy then = PowerUpStudy.of(log.find(Long.toString(earlier.entry().number())));
      Comparison comparison = now.against(then);
      found.add(new Against(earlier.entry(), earlier.knownGood(), comparison));
    }
    return new Changes(found);
  }
}
