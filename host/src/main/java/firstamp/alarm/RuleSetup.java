package firstamp.alarm;

/**
 * What the rules must know in addition to the sheet and the stream.
 *
 * @param label of the power-up, quoted in alarms ("since W3 went to P7"); null = none
 * @param observe the switch is not ours: times count from the first reading above a tenth of
 *     nominal
 * @param reducedStream readings only: tones, hum and ripple cannot be judged
 * @param lookOhm look resistor of the probe
 * @param hardShortA level of the probe's comparator
 */
public record RuleSetup(
    String label, boolean observe, boolean reducedStream, double lookOhm, double hardShortA) {
  /** A probe of the normal build on the raw stream, no label. */
  public static RuleSetup normal() {
    return new RuleSetup(null, false, false, 330, 10);
  }

  /** The same with a label. */
  public RuleSetup withLabel(String text) {
    return new RuleSetup(text, observe, reducedStream, lookOhm, hardShortA);
  }
}
