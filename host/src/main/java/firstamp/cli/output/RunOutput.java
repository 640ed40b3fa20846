package firstamp.cli.output;

import firstamp.account.FigureList;
import firstamp.model.ProbeHello;
import firstamp.model.Summary;
import firstamp.pipeline.ChainListener;
import firstamp.study.OtherRules;
import firstamp.study.WhatIfReport;
import java.util.List;

/** What a headless run prints: JSON lines for scripts, or sentences for people. */
public interface RunOutput extends ChainListener {
  /** The power-up is in the log, the probe has answered. */
  void started(Integer powerUp, String uuid, String sheet, ProbeHello hello, boolean observe);

  /** Seconds until the switch closes. */
  void countdown(int seconds);

  /** What another sheet would have found on a logged power-up, beside what was found. */
  default void beside(String sheet, List<WhatIfReport.Beside> rows) {}

  /** The power-up was judged by other rules than today's; before the summary of its replay. */
  default void otherRules(OtherRules rules) {}

  /**
   * The end.
   *
   * @param figures all of them, also those that the summary has no key for
   */
  void summary(Summary summary, FigureList figures);

  /** Whether a person reads along, who wants the verdict at the end. */
  default boolean forPeople() {
    return false;
  }
}
