package firstamp.model.text;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.stream.Collectors;

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

  /** The sentence of a key; numbers with three digits, everything else as text. */
  public String say(String key, Object... values) {
    Object[] texts = new Object[values.length];
    for (int k = 0; k < values.length; k++) {
      texts[k] = text(values[k]);
    }
    return new MessageFormat(sentences.getString(key), locale).format(texts);
  }

  /** All phrases, a space between them. */
  public String say(Wording wording) {
    return wording.phrases().stream().map(this::text).collect(Collectors.joining(" "));
  }

  /** Whether there is a sentence of this key. */
  public boolean has(String key) {
    return sentences.containsKey(key);
  }

  /** A value as a sentence would have it. */
  public String written(Object value) {
    return text(value);
  }

  private String text(Object value) {
    if (value instanceof Double number) {
      return digits(Numbers.text(number));
    }
    if (value instanceof Wording.Quantity quantity) {
      return digits(Numbers.text(quantity.value())) + " " + quantity.unit();
    }
    if (value instanceof Wording.Written number) {
      return digits(number.digits());
    }
    if (value instanceof Wording.Phrase phrase) {
      return say(phrase.key(), phrase.values().toArray());
    }
    if (value instanceof Worded worded) {
      return worded.in(locale);
    }
    return String.valueOf(value);
  }

  private String digits(String number) {
    return "de".equals(locale.getLanguage()) ? number.replace('.', ',') : number;
  }

  /** The language. */
  public Locale locale() {
    return locale;
  }
}
