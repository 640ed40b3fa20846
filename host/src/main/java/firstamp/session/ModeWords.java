package firstamp.session;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** What hands in and soak say, in English; the window says the same in the person's language. */
final class ModeWords {
  private static final ResourceBundle WORDS =
      ResourceBundle.getBundle("firstamp.session.modes", Locale.ROOT);

  private ModeWords() {}

  /** The words for a key; every value as text. */
  static String say(String key, Object... values) {
    Object[] texts = new Object[values.length];
    for (int k = 0; k < values.length; k++) {
      texts[k] = String.valueOf(values[k]);
    }
    return new MessageFormat(WORDS.getString(key), Locale.ROOT).format(texts);
  }
}
