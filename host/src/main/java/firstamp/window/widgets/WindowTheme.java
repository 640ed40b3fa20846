package firstamp.window.widgets;

import com.formdev.flatlaf.FlatDarkLaf;
import com.formdev.flatlaf.FlatLaf;
import com.formdev.flatlaf.FlatLightLaf;
import firstamp.app.WindowOptions;
import java.awt.Color;
import java.awt.Font;
import java.util.HashMap;
import java.util.Map;
import javax.swing.UIManager;

/** Puts our own colours and sizes into the look and feel, before any Swing object exists. */
public final class WindowTheme {
  /**
   * No text is smaller. Capitals then stand 16 minutes of arc high at 600 mm, the least of ISO
   * 9241-303 (from memory), where a pixel is 1/96 inch as in CSS Values 3; held by {@code
   * TextSizeTest} on the fonts that are really there, as are the two below.
   */
  public static final int LEAST_POINTS = 15;

  /** Sentences that must be read: 20 minutes of arc at 600 mm, where ISO 9241-303 prefers to be. */
  public static final int READING_POINTS = 19;

  /** What is read from two metres: 16 minutes of arc there. */
  public static final int FAR_POINTS = 49;

  private final Palette palette;

  public WindowTheme(WindowOptions.Theme theme) {
    this.palette = Palette.of(theme);
    apply(theme == WindowOptions.Theme.LIGHT);
  }

  private void apply(boolean light) {
    // No native parts: nothing is unpacked, and it also runs where that is forbidden.
    System.setProperty("flatlaf.useNativeLibrary", "false");
    System.setProperty("flatlaf.useWindowDecorations", "false");
    Map<String, String> colours = new HashMap<>();
    colours.put("@background", hex(palette.ground()));
    colours.put("@foreground", hex(palette.ink()));
    colours.put("@accentColor", hex(palette.ask()));
    colours.put("@disabledForeground", hex(palette.quietInk()));
    colours.put("Component.focusColor", hex(palette.focus()));
    colours.put("Component.borderColor", hex(palette.edge()));
    colours.put("Component.disabledBorderColor", hex(palette.edge()));
    colours.put("Component.focusWidth", "2");
    colours.put("Component.arc", "4");
    colours.put("Button.arc", "4");
    colours.put("Button.background", hex(palette.control()));
    colours.put("Button.foreground", hex(palette.ink()));
    colours.put("Button.disabledBackground", hex(palette.ground()));
    colours.put("Button.borderColor", hex(palette.edge()));
    colours.put("Button.disabledText", hex(palette.quietInk()));
    colours.put("Label.disabledForeground", hex(palette.quietInk()));
    colours.put("ComboBox.background", hex(palette.control()));
    colours.put("ComboBox.foreground", hex(palette.ink()));
    colours.put("ComboBox.buttonArrowColor", hex(palette.ink()));
    colours.put("CheckBox.icon.borderColor", hex(palette.ink()));
    colours.put("ToolTip.background", hex(palette.surface()));
    colours.put("ToolTip.foreground", hex(palette.ink()));
    FlatLaf.setGlobalExtraDefaults(colours);
    UIManager.put("defaultFont", new Font(Font.SANS_SERIF, Font.PLAIN, LEAST_POINTS));
    boolean done = light ? FlatLightLaf.setup() : FlatDarkLaf.setup();
    if (!done) {
      throw new IllegalStateException("the look and feel could not be set up");
    }
  }

  public Palette palette() {
    return palette;
  }

  public static Color colour(int rgb) {
    return new Color(rgb);
  }

  public static Font font(boolean bold, float points) {
    return new Font(Font.SANS_SERIF, bold ? Font.BOLD : Font.PLAIN, 1)
        .deriveFont(Math.max(LEAST_POINTS, points));
  }

  private static String hex(int rgb) {
    return String.format("#%06x", rgb);
  }
}
