package firstamp.model;

import java.util.Locale;

/** What is different when a set is switched on again after it switched itself off. */
public enum Difference {
  /** A wire was moved, taken off or put back. */
  WIRE,
  /** A part was changed or taken out. */
  PART,
  /** A limit was changed. */
  LIMIT,
  /** The supply gives other volts. */
  VOLTS,
  /** Nothing. */
  NOTHING;

  /** Name in files and on the command line. */
  public String id() {
    return name().toLowerCase(Locale.ROOT);
  }
}
