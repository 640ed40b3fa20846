package firstamp.model.text;

import java.util.Locale;

/** A failure that says in any language what is wrong; its message is the English one. */
public interface Explained {
  /** What failed, on what, what was expected, what to try. */
  Worded words();

  /** What a failure says in a language; one that has only English says that. */
  static String in(Exception failure, Locale locale) {
    return of(failure).in(locale);
  }

  /** What a failure says. */
  static Worded of(Exception failure) {
    return failure instanceof Explained explained
        ? explained.words()
        : Worded.asIs(String.valueOf(failure.getMessage()));
  }
}
