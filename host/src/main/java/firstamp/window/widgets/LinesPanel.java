package firstamp.window.widgets;

import java.awt.BorderLayout;
import java.util.List;
import javax.swing.BorderFactory;
import javax.swing.JPanel;
import javax.swing.JTextArea;

/** A few lines of text under a title. */
public final class LinesPanel {
  private LinesPanel() {}

  /** The lines on a sheet of their own, named after them. */
  public static JPanel of(Pieces pieces, String title, JTextArea lines) {
    JPanel panel = pieces.sheet(lines.getName() + "-list", new BorderLayout(0, 4));
    panel.setBorder(BorderFactory.createEmptyBorder(6, 14, 6, 14));
    panel.add(pieces.label(lines.getName() + "-title", title, true, 16), BorderLayout.NORTH);
    panel.add(lines, BorderLayout.CENTER);
    return panel;
  }

  /** The first ones of the texts, a line each. */
  public static String first(List<String> texts, int most) {
    return String.join("\n", texts.subList(0, Math.min(most, texts.size())));
  }
}
