package firstamp.cli.run;

import firstamp.app.Desk;
import firstamp.app.WindowOptions;
import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.Said;
import firstamp.window.page.ScreenRoom;
import java.util.Locale;
import picocli.CommandLine.Option;

/** How the window looks; what is not said is as it was the last time. */
public final class LookOptions {
  private static final String UI_SCALE = "sun.java2d.uiScale";

  @Option(
      names = "--language",
      paramLabel = "LANGUAGE",
      description = "of the window: en or de (default: as the last time, first en)")
  private String language;

  @Option(
      names = "--theme",
      paramLabel = "THEME",
      description = "of the window: light, dark or high-contrast (default: as the last time)")
  private String theme;

  @Option(
      names = "--scale",
      paramLabel = "SCALE",
      description =
          "size of the window: 1, 2 or 3, as far as the screen has room (default as the last time,"
              + " or as the system says)")
  private Double scale;

  private Integer largest;

  /** A size that was kept gives way where it does not fit. */
  private Integer size(Desk desk) throws CliFailure {
    Double asked = scale == null ? desk.scale() : scale;
    if (asked == null) {
      return null;
    }
    checkScale();
    return asked == 1 ? 1 : (int) Math.max(1, Math.min(largest(), Math.floor(asked)));
  }

  /** A size that is asked for is refused where it does not fit. */
  private void checkScale() throws CliFailure {
    if (scale == null || scale == 1) {
      return;
    }
    boolean whole = scale >= 1 && scale <= ScreenRoom.MOST && scale == Math.rint(scale);
    if (!(whole && scale <= largest())) {
      throw new CliFailure(
          ExitCode.USAGE,
          Said.of(
              whole ? "look.scale.does-not-fit" : "look.scale.no-step", shown(scale), largest()));
    }
  }

  /** Measured once: a process of its own does it. */
  private synchronized int largest() {
    largest = largest == null ? (Integer) ScreenRoom.largest() : largest;
    return largest;
  }

  private static String shown(double size) {
    return size == Math.rint(size) ? Long.toString((long) size) : Double.toString(size);
  }

  WindowOptions of(Desk desk) throws CliFailure {
    Integer size = size(desk);
    if (size != null && System.getProperty(UI_SCALE) == null) {
      // Read once, when the first window part is made.
      System.setProperty(UI_SCALE, size.toString());
    }
    WindowOptions last = desk.options(true);
    return new WindowOptions(chosenTheme(last.theme()), chosenLocale(last.locale()), true);
  }

  /** Refuses what there is not, before anything is opened. */
  void check() throws CliFailure {
    checkScale();
    chosenTheme(WindowOptions.Theme.LIGHT);
    chosenLocale(Locale.ENGLISH);
  }

  private WindowOptions.Theme chosenTheme(WindowOptions.Theme last) throws CliFailure {
    if (theme == null) {
      return last;
    }
    WindowOptions.Theme found = WindowOptions.Theme.of(theme);
    if (!found.id().equals(theme)) {
      throw new CliFailure(ExitCode.USAGE, Said.of("look.theme-expected-light-dark-or", theme));
    }
    return found;
  }

  private Locale chosenLocale(Locale last) throws CliFailure {
    if (language == null) {
      return last;
    }
    return WindowOptions.languages().stream()
        .filter(each -> each.getLanguage().equals(language))
        .findFirst()
        .orElseThrow(
            () ->
                new CliFailure(
                    ExitCode.USAGE,
                    Said.of("language-option.language-expected-en-or-de", language)));
  }
}
