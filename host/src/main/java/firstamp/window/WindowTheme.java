package firstamp.window;

import com.formdev.flatlaf.FlatDarkLaf;
import com.formdev.flatlaf.FlatLaf;
import com.formdev.flatlaf.FlatLightLaf;
import java.awt.Color;
import java.awt.Font;
import java.util.HashMap;
import java.util.Map;
import javax.swing.UIManager;

/** Puts our own colours and sizes into the look and feel, before any Swing object exists. */
final class WindowTheme {
  private static final int BASE_POINTS = 15;

  private final Palette palette;

  WindowTheme(WindowOptions.Theme theme) {
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
    UIManager.put("defaultFont", new Font(Font.SANS_SERIF, Font.PLAIN, BASE_POINTS));
    boolean done = light ? FlatLightLaf.setup() : FlatDarkLaf.setup();
    if (!done) {
      throw new IllegalStateException("the look and feel could not be set up");
    }
  }

  Palette palette() {
    return palette;
  }

  static Color colour(int rgb) {
    return new Color(rgb);
  }

  static Font font(boolean bold, float points) {
    return new Font(Font.SANS_SERIF, bold ? Font.BOLD : Font.PLAIN, 1).deriveFont(points);
  }

  private static String hex(int rgb) {
    return String.format("#%06x", rgb);
  }
}
