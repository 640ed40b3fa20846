package firstamp.cli.output;

import firstamp.model.text.Worded;

/** What the command line has to say, before any language. */
public final class Said {
  static final String BUNDLE = "firstamp.cli.output.said";

  private Said() {}

  /** The sentence of a key. */
  public static Worded of(String key, Object... values) {
    return Worded.of(BUNDLE, key, values);
  }
}
