package firstamp.cli.run;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.log.BenchLog;
import firstamp.window.BenchWindow;
import firstamp.window.Desk;
import firstamp.window.ScreenRoom;
import firstamp.window.WindowOptions;
import java.nio.file.Path;
import java.util.Locale;
import picocli.CommandLine.Option;

/** How the window looks; what is not said is as it was the last time. */
public final class LookOptions {
  private static final String UI_SCALE = "sun.java2d.uiScale";

  @Option(
      names = "--language",
      paramLabel = "LANGUAGE",
      description = "of the window: en or de (default as the last time, en at first)")
  private String language;

  @Option(
      names = "--theme",
      paramLabel = "THEME",
      description = "of the window: light, dark or high-contrast (default as the last time)")
  private String theme;

  @Option(
      names = "--scale",
      paramLabel = "SCALE",
      description =
          "size of the window: 1, 2 or 3, as far as the screen has room (default as the last time,"
              + " or as the system says)")
  private Double scale;

  /** What is asked for is refused where it does not fit; what was kept gives way. */
  private Integer size(Desk desk) throws CliFailure {
    Double asked = scale == null ? desk.scale() : scale;
    if (asked == null) {
      return null;
    }
    boolean whole = asked >= 1 && asked <= ScreenRoom.MOST && asked == Math.rint(asked);
    if (whole && asked == 1) {
      return 1;
    }
    int largest = ScreenRoom.largest();
    if (scale != null && !(whole && asked <= largest)) {
      throw new CliFailure(
          ExitCode.USAGE,
          "--scale "
              + shown(asked)
              + (whole ? " does not fit this screen." : " is no whole step that fits this screen.")
              + " The largest that does is "
              + largest
              + ".");
    }
    return (int) Math.max(1, Math.min(largest, Math.floor(asked)));
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
    return new WindowOptions(
        theme == null ? last.theme() : theme(), language == null ? last.locale() : locale(), true);
  }

  /**
   * Begins with the window on a thread of its own, as the log takes about as long to open.
   *
   * @param log of the window, null = the bench log
   */
  public void prepare(Path log) {
    Path file = (log == null ? BenchLog.defaultFile() : log).toAbsolutePath();
    Thread thread =
        new Thread(
            () -> {
              try {
                BenchWindow.prepare(of(ThisBench.desk(file, file, sheet -> null)));
              } catch (CliFailure saidLater) {
                // The window itself meets it.
                return;
              } catch (InterruptedException stop) {
                Thread.currentThread().interrupt();
              }
            },
            "window-prepare");
    thread.setDaemon(true);
    thread.start();
  }

  private WindowOptions.Theme theme() throws CliFailure {
    WindowOptions.Theme found = WindowOptions.Theme.of(theme);
    if (!found.id().equals(theme)) {
      throw new CliFailure(
          ExitCode.USAGE, "--theme " + theme + ", expected light, dark or high-contrast");
    }
    return found;
  }

  private Locale locale() throws CliFailure {
    return WindowOptions.languages().stream()
        .filter(each -> each.getLanguage().equals(language))
        .findFirst()
        .orElseThrow(
            () -> new CliFailure(ExitCode.USAGE, "--language " + language + ", expected en or de"));
  }
}
