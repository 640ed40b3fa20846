package firstamp.window.words;

import java.text.MessageFormat;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.ResourceBundle;

/** The window's words in one language. Immutable, safe to share. */
public final class Words {
  /** Names of the bundles; a key stands in one of them only. */
  static final List<String> BUNDLES =
      List.of(
          "firstamp.window.words",
          "firstamp.window.flow",
          "firstamp.window.think",
          "firstamp.window.scenarios",
          "firstamp.account.watch",
          "firstamp.sheet.questions",
          "firstamp.study.told");

  /** Languages that are there whole; the first one is the language of the plain files. */
  public static final List<Locale> LANGUAGES = List.of(Locale.ENGLISH, Locale.GERMAN);

  private final List<ResourceBundle> bundles;
  private final Locale locale;

  public Words(Locale locale) {
    this.locale = Objects.requireNonNull(locale, "locale");
    ResourceBundle.Control control =
        ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES);
    this.bundles =
        BUNDLES.stream().map(name -> ResourceBundle.getBundle(name, locale, control)).toList();
  }

  public Locale locale() {
    return locale;
  }

  /** The words for a key; {0}, {1} ... stand for the arguments. */
  public String get(String key, Object... arguments) {
    String pattern = holder(key).getString(key);
    return arguments.length == 0 ? pattern : new MessageFormat(pattern, locale).format(arguments);
  }

  public boolean has(String key) {
    return bundles.stream().anyMatch(bundle -> bundle.containsKey(key));
  }

  /** The words for a key, or other words where no bundle has it. */
  public String getOr(String key, String otherwise) {
    return has(key) ? holder(key).getString(key) : otherwise;
  }

  /** The bundle with the key; the first one, which then says that it is missing, where none has. */
  private ResourceBundle holder(String key) {
    return bundles.stream()
        .filter(bundle -> bundle.containsKey(key))
        .findFirst()
        .orElse(bundles.get(0));
  }
}
