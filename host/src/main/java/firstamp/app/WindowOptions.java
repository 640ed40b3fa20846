package firstamp.app;

import firstamp.window.words.Words;
import java.util.List;
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

  /** Languages that are there whole. */
  public static List<Locale> languages() {
    return Words.LANGUAGES;
  }

  /** Ground and inks. */
  public enum Theme {
    /** Dark ink on a light ground. */
    LIGHT,
    /** Light ink on a dark ground. */
    DARK,
    /** White on black, strong edges. */
    HIGH_CONTRAST;

    /** Name on the command line and in the settings. */
    public String id() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The theme of a name; light where there is none of it. */
    public static Theme of(String id) {
      for (Theme theme : values()) {
        if (theme.id().equals(id)) {
          return theme;
        }
      }
      return LIGHT;
    }
  }
}
