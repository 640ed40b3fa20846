package firstamp.run;

/** Where a live run stands. */
public enum RunStep {
  /** Looking for the probe. */
  CONNECTING,
  /** The stream is asked for. */
  STARTING,
  /** The probe takes its limits. */
  LIMITS,
  /** Logged with the switch open. */
  QUIET,
  /** The probe is asked to switch on. */
  ARMING,
  /** The probe checks, looks and closes. */
  CLOSING,
  /** The switch is closed (or, without a switch of ours, the set is watched). */
  ON,
  /** The switch is open again, the rails are followed down. */
  FALLING,
  /** The stream is stopped and drained. */
  STOPPING,
  /** Over. */
  DONE
}
