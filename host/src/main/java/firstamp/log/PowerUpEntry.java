package firstamp.log;

import firstamp.model.RulesVersion;

/**
 * One power-up as the list shows it.
 *
 * @param number in this log
 * @param uuid unique name
 * @param label of the person, null = none
 * @param setName from the sheet
 * @param startedEpochMs begin by the computer's clock
 * @param endedEpochMs end, null = never finished
 * @param stream what the probe sent
 * @param probeKind what answered, in words
 * @param finished whether the end was written; false after a kill, or while it runs
 * @param outcome of the summary, null = not finished
 * @param ended how it ended, null = not finished
 * @param summaryJson the stored summary, unchanged; null = none
 * @param asFound flag of the person
 * @param baseline flag of the person ("known good")
 * @param trialWire unknown wire that was tried, null = none
 * @param trialPlace where it was joined, null = none
 * @param rulesVersion by which rules the stored summary was made
 */
public record PowerUpEntry(
    long number,
    String uuid,
    String label,
    String setName,
    long startedEpochMs,
    Long endedEpochMs,
    PowerUpHeader.Stream stream,
    String probeKind,
    boolean finished,
    String outcome,
    String ended,
    String summaryJson,
    boolean asFound,
    boolean baseline,
    String trialWire,
    String trialPlace,
    int rulesVersion) {
  /** A power-up of today's rules that tries no wire. */
  public PowerUpEntry(
      long number,
      String uuid,
      String label,
      String setName,
      long startedEpochMs,
      Long endedEpochMs,
      PowerUpHeader.Stream stream,
      String probeKind,
      boolean finished,
      String outcome,
      String ended,
      String summaryJson,
      boolean asFound,
      boolean baseline) {
    this(
        number,
        uuid,
        label,
        setName,
        startedEpochMs,
        endedEpochMs,
        stream,
        probeKind,
        finished,
        outcome,
        ended,
        summaryJson,
        asFound,
        baseline,
        null,
        null,
        RulesVersion.NOW);
  }
}
