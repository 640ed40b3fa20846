package firstamp.window.pages;

import firstamp.app.Desk;
import firstamp.app.DeskSettings;
import firstamp.app.WindowOptions;
import firstamp.window.page.Page;
import firstamp.window.page.ScreenRoom;
import firstamp.window.page.Tools;
import firstamp.window.widgets.Choices;
import firstamp.window.widgets.Pieces;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import java.awt.GraphicsConfiguration;
import java.awt.GridBagConstraints;
import java.awt.GridBagLayout;
import java.awt.Insets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;

/** Language, ground and size of the window. */
public final class LookPage implements Page {
  private static final List<Double> SCALES = List.of(1.0, 2.0, 3.0);

  private final Tools tools;
  private final Words words;
  private final Pieces pieces;
  private final JPanel page;
  private final Choices language;
  private final Choices theme;
  private final Choices scale;
  private final List<Choices> rows;
  private final JTextArea said;

  public LookPage(Tools tools) {
    this.tools = tools;
    words = tools.words();
    pieces = tools.pieces();
    page = pieces.page("look", new BorderLayout(0, 16));
    said =
        pieces.prose("look-said", words.get("look.more"), WindowTheme.READING_POINTS, Pieces.WIDTH);
    // Every language is called what its speakers call it.
    language =
        new Choices(
            pieces,
            "look.language",
            1,
            Words.LANGUAGES.stream().map(each -> new Words(each).get("language")).toList());
    language.choose(
        Math.max(0, Words.LANGUAGES.indexOf(Locale.forLanguageTag(words.locale().getLanguage()))));
    theme =
        new Choices(
            pieces,
            "look.theme",
            3,
            Arrays.stream(WindowOptions.Theme.values())
                .map(each -> words.get("theme." + each.id()))
                .toList());
    theme.choose(tools.shell().options().theme().ordinal());
    scale = new Choices(pieces, "look.scale", 6, SCALES.stream().map(this::percent).toList());
    rows = List.of(language, theme, scale);
    layOut();
  }

  private String percent(double size) {
    return words.get("look.percent", tools.numbers().fixed(100 * size, 0));
  }

  private void layOut() {
    JPanel sheet = pieces.sheet("look-rows", new GridBagLayout());
    row(sheet, 0, "look.language", language);
    row(sheet, 1, "look.theme", theme);
    row(sheet, 2, "look.scale", scale);
    GridBagConstraints rest = new GridBagConstraints();
    rest.gridy = 3;
    rest.gridx = 2;
    rest.weightx = 1;
    rest.weighty = 1;
    sheet.add(pieces.clear(new BorderLayout()), rest);
    JPanel bottom = pieces.clear(new BorderLayout(0, 10));
    bottom.add(said, BorderLayout.NORTH);
    JPanel buttons = pieces.clear(new BorderLayout());
    buttons.add(pieces.main("look.keep", this::goOn), BorderLayout.WEST);
    buttons.add(pieces.plain("look.back", this::back), BorderLayout.EAST);
    bottom.add(buttons, BorderLayout.SOUTH);
    page.add(pieces.label("look-title", words.get("look.title"), true, 28), BorderLayout.NORTH);
    page.add(sheet, BorderLayout.CENTER);
    page.add(bottom, BorderLayout.SOUTH);
  }

  private void row(JPanel sheet, int row, String name, Choices choices) {
    GridBagConstraints at = new GridBagConstraints();
    at.gridy = row;
    at.anchor = GridBagConstraints.WEST;
    at.insets = new Insets(12, 0, 12, 24);
    JLabel title = pieces.label(name + "-title", words.get("flow." + name), true, 20);
    title.setLabelFor(choices.first());
    sheet.add(title, at);
    at.gridx = 1;
    sheet.add(choices.component(), at);
  }

  @Override
  public String name() {
    return "look";
  }

  @Override
  public String title() {
    return words.get("look.title");
  }

  @Override
  public JComponent component() {
    return page;
  }

  @Override
  public void shown() {
    language.focus();
    Desk desk = tools.desk();
    tools.shell().aside(desk::settings, this::kept, this::failed);
  }

  /** The size of the last time, unless another was chosen meanwhile. */
  private void kept(DeskSettings settings) {
    if (settings.scale() != null && scale.chosen() == 0) {
      scale.choose(Math.max(0, SCALES.indexOf(settings.scale())));
    }
  }

  @Override
  public void goOn() {
    Locale locale = Words.LANGUAGES.get(language.chosen());
    WindowOptions.Theme chosen = WindowOptions.Theme.values()[theme.chosen()];
    double size = SCALES.get(scale.chosen());
    int largest = largest();
    if (size > largest) {
      Pieces.say(said, words.get("look.tooLarge", percent(size), percent(largest)), Pieces.WIDTH);
      page.revalidate();
      return;
    }
    Desk desk = tools.desk();
    boolean awake = tools.shell().options().keepAwake();
    tools
        .shell()
        .aside(
            () -> {
              desk.settings().withLook(locale, chosen, size).save(desk.folder());
              return new WindowOptions(chosen, locale, awake);
            },
            options -> tools.shell().dress(options),
            this::failed);
  }

  /** The largest size for this screen; a page in no window has all of them. */
  private int largest() {
    GraphicsConfiguration screen = page.getGraphicsConfiguration();
    return screen == null ? ScreenRoom.MOST : ScreenRoom.largest(screen);
  }

  @Override
  public void choose(int number) {
    rows.forEach(each -> each.key(number));
  }

  @Override
  public void across(int by) {
    rows.stream().filter(Choices::focused).findFirst().ifPresent(row -> row.across(by));
  }

  @Override
  public void move(int by) {
    int next = by;
    for (int at = 0; at < rows.size(); at++) {
      next += rows.get(at).focused() ? at : 0;
    }
    rows.get(Math.max(0, Math.min(rows.size() - 1, next))).focus();
  }

  private void failed(Exception failure) {
    Pieces.say(said, tools.why(failure), Pieces.WIDTH);
    page.revalidate();
  }

  @Override
  public void back() {
    tools.shell().home();
  }
}
