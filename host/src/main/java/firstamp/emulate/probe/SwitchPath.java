package firstamp.emulate.probe;

import firstamp.emulate.bench.Joined;

/** Moves the pins that join supply and set. */
public interface SwitchPath {
  void join(Joined joined);

  /** Gives the switch its gate volts, its own pin low; false: takes them away. */
  void pump(boolean on);
}
