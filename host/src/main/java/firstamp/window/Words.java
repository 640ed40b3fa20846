package firstamp.window;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.Objects;
import java.util.ResourceBundle;

/** The window's words in one language. Immutable, safe to share. */
final class Words {
  /** Name of the bundle. */
  static final String BUNDLE = "firstamp.window.words";

  private final ResourceBundle bundle;
  private final Locale locale;

  Words(Locale locale) {
    this.locale = Objects.requireNonNull(locale, "locale");
    this.bundle =
        ResourceBundle.getBundle(
            BUNDLE,
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  Locale locale() {
    return locale;
  }

  /** The words for a key; {0}, {1} ... stand for the arguments. */
  String get(String key, Object... arguments) {
    String pattern = bundle.getString(key);
    return arguments.length == 0 ? pattern : new MessageFormat(pattern, locale).format(arguments);
  }

  boolean has(String key) {
    return bundle.containsKey(key);
  }

  /** The words for a key, or other words where the bundle has none. */
  String getOr(String key, String otherwise) {
    return bundle.containsKey(key) ? bundle.getString(key) : otherwise;
  }
}
