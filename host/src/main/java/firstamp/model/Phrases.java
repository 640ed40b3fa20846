package firstamp.model;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/**
 * Sentences of one bundle in English, as log and command line speak; the window says the same in
 * the person's language. Safe to share.
 */
public final class Phrases {
  private final ResourceBundle sentences;

  /** The sentences of a bundle, by its whole name. */
  public Phrases(String bundle) {
    sentences = ResourceBundle.getBundle(bundle, Locale.ROOT);
  }

  /** The sentence of a key; every value goes in as text. */
  public String say(String key, Object... values) {
    Object[] texts = new Object[values.length];
    for (int k = 0; k < values.length; k++) {
      texts[k] = String.valueOf(values[k]);
    }
    return new MessageFormat(sentences.getString(key), Locale.ROOT).format(texts);
  }
}
