package firstamp.emulate;

/** Moves the pins that join supply and set. */
interface SwitchPath {
  void join(Joined joined);
}
