package firstamp.run;

import firstamp.model.text.Worded;

/** What the person is doing with a set that is on. */
public enum BenchMode {
  /** The limits of the sheet. */
  USUAL,
  /** Hands or a tool are in the set: the running limit is lowered to what the set draws now. */
  HANDS_IN,
  /** Nobody watches: any alarm switches off, and so does the end of the time. */
  SOAK;

  /** The next one on the key. */
  public BenchMode next() {
    return values()[(ordinal() + 1) % values().length];
  }

  /**
   * How it stands.
   *
   * @param mode now
   * @param words what that means, or why another one was refused; null = nothing to say
   * @param limitA running limit that was lowered, null = none
   * @param leftMs until soak switches off, null = not soaking
   */
  public record State(BenchMode mode, Worded words, Double limitA, Double leftMs) {
    /** At the start of a run. */
    public static final State BEGIN = new State(USUAL, null, null, null);
  }
}
