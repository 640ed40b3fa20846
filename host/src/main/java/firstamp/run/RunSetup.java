package firstamp.run;

import firstamp.locate.wire.TriedWire;
import firstamp.model.JobSheet;
import firstamp.model.PedalJob;
import firstamp.pipeline.SettingsPlan;
import firstamp.run.questions.ArmGate;

/**
 * What a live run is asked to do.
 *
 * @param effective sheet with defaults filled in
 * @param settings limits and look for this probe, once its calibration is known
 * @param label quoted in alarms, null = none
 * @param raw whether the raw stream is asked for
 * @param forMicros how long to stay on, probe time, null = until told
 * @param restoreTrip number of the latched trip to switch on again after, 0 = none
 * @param observe watch only: the switch is never closed
 * @param quietMicros logged with the switch open before arming, at least 2 s
 * @param gate questions that hold up arming
 * @param live whether the far end lives by the computer's clock (otherwise it runs as fast as it
 *     can)
 * @param roomCelsius room temperature, null = not said
 * @param trial the wire that is tried in it and where, null = none
 * @param pedal the one job of the box's own pedal
 */
public record RunSetup(
    JobSheet effective,
    SettingsPlan settings,
    String label,
    boolean raw,
    Long forMicros,
    int restoreTrip,
    boolean observe,
    long quietMicros,
    boolean live,
    ArmGate gate,
    Double roomCelsius,
    TriedWire trial,
    PedalJob pedal) {

  /** A run without a room temperature and with no wire on trial; its pedal is OFF. */
  public RunSetup(
      JobSheet effective,
      SettingsPlan settings,
      String label,
      boolean raw,
      Long forMicros,
      int restoreTrip,
      boolean observe,
      long quietMicros,
      boolean live,
      ArmGate gate) {
    this(
        effective,
        settings,
        label,
        raw,
        forMicros,
        restoreTrip,
        observe,
        quietMicros,
        live,
        gate,
        null,
        null,
        PedalJob.OFF);
  }

  /** The same in a room of this temperature; null = not said. */
  public RunSetup inRoom(Double celsius) {
    return with(restoreTrip, celsius, trial, pedal);
  }

  /** The same, with a wire on trial; null = none. */
  public RunSetup trying(TriedWire tried) {
    return with(restoreTrip, roomCelsius, tried, pedal);
  }

  /** The same with another job of the pedal. */
  public RunSetup withPedal(PedalJob job) {
    return with(restoreTrip, roomCelsius, trial, job);
  }

  /** The same, switching on again after a trip. */
  public RunSetup restoring(int tripNumber) {
    return with(tripNumber, roomCelsius, trial, pedal);
  }

  private RunSetup with(int tripNumber, Double celsius, TriedWire tried, PedalJob job) {
    return new RunSetup(
        effective,
        settings,
        label,
        raw,
        forMicros,
        tripNumber,
        observe,
        quietMicros,
        live,
        gate,
        celsius,
        tried,
        job);
  }
}
