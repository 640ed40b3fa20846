package firstamp.cli;

/** Exit codes (the open convention of sysexits where one fits). */
final class ExitCode {
  /** Done; a power-up: it did not switch itself off, no alarm. */
  static final int NORMAL = 0;

  /** The set tripped, drew nothing, or an alarm stands. */
  static final int FINDING = 3;

  /** The command line is wrong. */
  static final int USAGE = 64;

  /** A sheet or a log is wrong. */
  static final int BAD_DATA = 65;

  /** An input is missing. */
  static final int NO_INPUT = 66;

  /** The port is absent, busy, not permitted, or no probe answers on it. */
  static final int NO_PORT = 69;

  /** A defect of this program. */
  static final int DEFECT = 70;

  /** An output file is there already, or cannot be made. */
  static final int CANNOT_MAKE = 73;

  /** Input or output failed while running. */
  static final int IO_ERROR = 74;

  /** Arming was refused. */
  static final int REFUSED = 77;

  /** Interrupted by a signal. */
  static final int INTERRUPTED = 130;

  private ExitCode() {}
}
