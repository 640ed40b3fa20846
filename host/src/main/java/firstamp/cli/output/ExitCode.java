package firstamp.cli.output;

/** Exit codes (the open convention of sysexits where one fits). */
public final class ExitCode {
  /** Done; a power-up: it did not switch itself off, no alarm. */
  public static final int NORMAL = 0;

  /** The set tripped, drew nothing, or an alarm stands. */
  public static final int FINDING = 3;

  /** The command line is wrong. */
  public static final int USAGE = 64;

  /** A sheet or a log is wrong. */
  public static final int BAD_DATA = 65;

  /** An input is missing. */
  public static final int NO_INPUT = 66;

  /** The port is absent, busy, not permitted, or no probe answers on it. */
  public static final int NO_PORT = 69;

  /** A defect of this program. */
  public static final int DEFECT = 70;

  /** An output file is there already, or cannot be made. */
  public static final int CANNOT_MAKE = 73;

  /** Input or output failed while running. */
  public static final int IO_ERROR = 74;

  /** Arming was refused. */
  public static final int REFUSED = 77;

  /** Interrupted by a signal. */
  public static final int INTERRUPTED = 130;

  private ExitCode() {}
}
