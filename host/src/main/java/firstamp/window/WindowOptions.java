package firstamp.window;

import java.util.Locale;
import java.util.Objects;

/**
 * How the window looks and behaves.
 *
 * @param theme ground and inks
 * @param locale of words and numbers
 * @param keepAwake whether the computer is kept from sleeping while the set is on
 */
public record WindowOptions(Theme theme, Locale locale, boolean keepAwake) {
  /** Checks for null. */
  public WindowOptions {
    Objects.requireNonNull(theme, "theme");
    Objects.requireNonNull(locale, "locale");
  }

  /** Light ground, English, kept awake. */
  public static WindowOptions usual() {
    return new WindowOptions(Theme.LIGHT, Locale.ENGLISH, true);
  }

  /** Ground and inks. */
  public enum Theme {
    /** Dark ink on a light ground. */
    LIGHT,
    /** Light ink on a dark ground. */
    DARK,
    /** White on black, strong edges. */
    HIGH_CONTRAST
  }
}
