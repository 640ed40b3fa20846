package firstamp.emulate;

/** Moves the pins that join supply and set. */
interface SwitchPath {
  void join(Joined joined);

  /** Gives the switch its gate volts, its own pin low; false: takes them away. */
  void pump(boolean on);
}
