package firstamp.supply;

import firstamp.model.text.Worded;

/**
 * State of a bench supply.
 *
 * @param phase how far it has come
 * @param name that it gave, null = not known yet
 * @param volts set, null = nothing yet
 * @param limitA set, null = nothing yet
 * @param measuredA current by its own meter, null = not measured
 * @param problem what went wrong; continues "the bench supply"; null = nothing
 */
public record SupplyState(
    Phase phase, String name, Double volts, Double limitA, Double measuredA, Worded problem) {
  /** How far it has come. */
  public enum Phase {
    /** It has not given its name. */
    CONNECTING,
    /** It obeys, its output is off. */
    OFF,
    /** The latest request is being carried out. */
    BUSY,
    /** Its output is on as last requested. */
    ON,
    /** It was told to switch off and has not confirmed it yet. */
    SWITCHING_OFF,
    /** It does not obey; it was told to switch off. */
    FAILED
  }
}
