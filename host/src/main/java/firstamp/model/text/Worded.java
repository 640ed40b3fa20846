package firstamp.model.text;

import java.util.Locale;

/**
 * What is to be said and where its words are: text is made of it at the edge, in the language asked
 * for. Immutable.
 *
 * @param bundle whole name of the bundle; empty = the key is the text itself, in nobody's language
 * @param wording the phrases of it
 */
public record Worded(String bundle, Wording wording) {
  /** A sentence of a bundle; a value may itself be worded. */
  public static Worded of(String bundle, String key, Object... values) {
    return new Worded(bundle, Wording.of(key, values));
  }

  /** Text that has no other language: what a file or the system said. */
  public static Worded asIs(String text) {
    return new Worded("", Wording.of(text));
  }

  /** In English, the language of the log. */
  public String english() {
    return in(Locale.ROOT);
  }

  /** In a language; English where the bundle does not have it. */
  public String in(Locale locale) {
    return bundle.isEmpty()
        ? wording.phrases().get(0).key()
        : new Phrases(bundle, locale).say(wording);
  }
}
