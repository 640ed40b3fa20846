package firstamp.model;

/** Who changed the state of the switch; the order is that of the wire format. */
public enum OffCause {
  /** The probe's start (a reset). */
  START,
  /** The person, through the host. */
  USER,
  /** A rule of the host. */
  RULE,
  /** The time asked for was over. */
  TIME,
  /** The host process was asked to end. */
  SIGNAL,
  /** The probe's button. */
  BUTTON,
  /** The pedal, held. */
  PEDAL,
  /** The probe tripped. */
  TRIP,
  /** The look's result did not let the switch close, or a look alone was over. */
  LOOK,
  /** The chassis clip was lost before closing. */
  CHASSIS,
  /** The host fell silent before closing. */
  SILENCE
}
