package firstamp.window;

import java.awt.BorderLayout;
import java.awt.GraphicsConfiguration;
import java.awt.GridBagConstraints;
import java.awt.GridBagLayout;
import java.awt.Insets;
import java.util.List;
import java.util.Locale;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;

/** Language, ground and size of the window. */
final class LookPage implements Page {
  private static final List<Double> SCALES = List.of(1.0, 2.0, 3.0);

  private final Tools tools;
  private final Words words;
  private final Pieces pieces;
  private final JPanel page;
  private final JComboBox<String> language = new JComboBox<>();
  private final JComboBox<String> theme = new JComboBox<>();
  private final JComboBox<String> scale = new JComboBox<>();
  private final JTextArea said;

  LookPage(Tools tools) {
    this.tools = tools;
    words = tools.words();
    pieces = tools.pieces();
    page = pieces.page("look", new BorderLayout(0, 16));
    said =
        pieces.prose("look-said", words.get("look.more"), WindowTheme.READING_POINTS, Pieces.WIDTH);
    for (Locale each : Words.LANGUAGES) {
      // Every language is called what its speakers call it.
      language.addItem(new Words(each).get("language"));
    }
    language.setSelectedIndex(
        Math.max(0, Words.LANGUAGES.indexOf(Locale.forLanguageTag(words.locale().getLanguage()))));
    for (WindowOptions.Theme each : WindowOptions.Theme.values()) {
      theme.addItem(words.get("theme." + each.id()));
    }
    theme.setSelectedIndex(tools.shell().options().theme().ordinal());
    for (double each : SCALES) {
      scale.addItem(words.get("look.times", tools.numbers().short3(each)));
    }
    layOut();
  }

  private void layOut() {
    JPanel rows = pieces.sheet("look-rows", new GridBagLayout());
    row(rows, 0, "look.language", language);
    row(rows, 1, "look.theme", theme);
    row(rows, 2, "look.scale", scale);
    GridBagConstraints rest = new GridBagConstraints();
    rest.gridy = 3;
    rest.gridx = 2;
    rest.weightx = 1;
    rest.weighty = 1;
    rows.add(pieces.clear(new BorderLayout()), rest);
    JPanel bottom = pieces.clear(new BorderLayout(0, 10));
    bottom.add(said, BorderLayout.NORTH);
    JPanel buttons = pieces.clear(new BorderLayout());
    buttons.add(pieces.main("look.keep", this::goOn), BorderLayout.WEST);
    buttons.add(pieces.plain("look.back", this::back), BorderLayout.EAST);
    bottom.add(buttons, BorderLayout.SOUTH);
    page.add(pieces.label("look-title", words.get("look.title"), true, 28), BorderLayout.NORTH);
    page.add(rows, BorderLayout.CENTER);
    page.add(bottom, BorderLayout.SOUTH);
  }

  private void row(JPanel rows, int row, String name, JComboBox<String> box) {
    GridBagConstraints at = new GridBagConstraints();
    at.gridy = row;
    at.anchor = GridBagConstraints.WEST;
    at.insets = new Insets(12, 0, 12, 24);
    JLabel title = pieces.label(name + "-title", words.get("flow." + name), true, 20);
    title.setLabelFor(box);
    box.setName(name);
    box.setFont(WindowTheme.font(false, 20));
    box.getAccessibleContext().setAccessibleName(words.get("flow." + name));
    pieces.describe(box, name);
    rows.add(title, at);
    at.gridx = 1;
    rows.add(box, at);
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
    Desk desk = tools.desk();
    tools
        .shell()
        .aside(
            desk::settings,
            settings ->
                scale.setSelectedIndex(
                    settings.scale() == null ? 0 : Math.max(0, SCALES.indexOf(settings.scale()))),
            this::failed);
  }

  @Override
  public void goOn() {
    Locale locale = Words.LANGUAGES.get(language.getSelectedIndex());
    WindowOptions.Theme chosen = WindowOptions.Theme.values()[theme.getSelectedIndex()];
    double size = SCALES.get(scale.getSelectedIndex());
    int largest = largest();
    if (size > largest) {
      Pieces.say(said, words.get("look.tooLarge", (int) size, largest), Pieces.WIDTH);
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

  /** Chooses as the person would, by place in the three lists. */
  void select(int languageAt, int themeAt, int scaleAt) {
    language.setSelectedIndex(languageAt);
    theme.setSelectedIndex(themeAt);
    scale.setSelectedIndex(scaleAt);
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
