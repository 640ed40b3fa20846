package firstamp.window.search;

import firstamp.window.widgets.Palette;
import firstamp.window.widgets.Pieces;
import firstamp.window.widgets.Tone;
import firstamp.window.widgets.WindowTheme;
import java.awt.BorderLayout;
import javax.swing.BorderFactory;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextArea;

/** One of the three places to try first: how likely, and what harm a wrong guess does. */
final class PlaceCard {
  private final Palette palette;
  private final int at;
  private final JPanel panel;
  private final JLabel name;
  private final JLabel likely;
  private final JTextArea harm;
  private final JTextArea reason;

  PlaceCard(Pieces pieces, Palette palette, int at) {
    this.palette = palette;
    this.at = at;
    panel = pieces.sheet("trial-place-" + (at + 1), new BorderLayout(0, 4));
    name = pieces.label("trial-place-name-" + (at + 1), " ", true, 20);
    likely = pieces.label("trial-place-likely-" + (at + 1), " ", true, 18);
    harm = pieces.prose("trial-place-harm-" + (at + 1), " ", WindowTheme.READING_POINTS, 340);
    reason = pieces.prose("trial-place-reason-" + (at + 1), "", WindowTheme.READING_POINTS, 340);
    JPanel top = pieces.clear(new BorderLayout());
    top.add(name, BorderLayout.NORTH);
    top.add(likely, BorderLayout.SOUTH);
    JPanel below = pieces.clear(new BorderLayout(0, 8));
    below.add(harm, BorderLayout.NORTH);
    below.add(reason, BorderLayout.CENTER);
    panel.add(top, BorderLayout.NORTH);
    panel.add(below, BorderLayout.CENTER);
  }

  JPanel panel() {
    return panel;
  }

  /**
   * Shows a place.
   *
   * @param place null = there is none, and no card
   * @param marked whether it is the chosen one
   */
  void show(WireView.PlaceView place, boolean marked) {
    panel.setVisible(place != null);
    if (place == null) {
      return;
    }
    boolean plain = place.tone() == Tone.PLAIN;
    int side = plain ? palette.edge() : palette.groundOf(place.tone());
    panel.setBorder(
        BorderFactory.createCompoundBorder(
            BorderFactory.createMatteBorder(0, 8, 0, 0, WindowTheme.colour(side)),
            BorderFactory.createCompoundBorder(
                marked
                    ? BorderFactory.createLineBorder(WindowTheme.colour(palette.focus()), 3)
                    : BorderFactory.createEmptyBorder(3, 3, 3, 3),
                BorderFactory.createEmptyBorder(8, 12, 8, 10))));
    name.setText((at + 1) + "  " + place.name());
    likely.setText(place.likely());
    Pieces.say(harm, place.harm(), 340);
    Pieces.say(reason, place.reason(), 340);
    panel
        .getAccessibleContext()
        .setAccessibleName(place.name() + ", " + place.likely() + ", " + place.harm());
  }
}
