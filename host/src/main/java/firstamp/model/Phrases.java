package firstamp.model;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/**
 * Sentences of one bundle: in English, the language of log and command line, or in another one.
 * Safe to share.
 */
public final class Phrases {
  private final ResourceBundle sentences;
  private final Locale locale;

  /** The English sentences of a bundle, by its whole name. */
  public Phrases(String bundle) {
    this(bundle, Locale.ROOT);
  }

  /** The sentences of a bundle in a language; English where there is no such bundle. */
  public Phrases(String bundle, Locale locale) {
    this.sentences =
        ResourceBundle.getBundle(
            bundle,
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
    this.locale = locale;
  }

  /** The sentence of a key; every value goes in as text. */
  public String say(String key, Object... values) {
    Object[] texts = new Object[values.length];
    for (int k = 0; k < values.length; k++) {
      texts[k] = String.valueOf(values[k]);
    }
    return new MessageFormat(sentences.getString(key), locale).format(texts);
  }

  /** The language. */
  public Locale locale() {
    return locale;
  }
}
