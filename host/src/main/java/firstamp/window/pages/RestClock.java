package firstamp.window.pages;

import firstamp.run.TripsInARow;
import firstamp.window.page.Tools;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.Tone;
import firstamp.window.widgets.WindowTheme;
import java.awt.Graphics2D;
import java.util.function.LongSupplier;

/** Paints how long a set still rests after it switched itself off. */
final class RestClock {
  private static final int BAR_WIDTH = 640;

  private final Tools tools;
  private final LongSupplier restS;

  RestClock(Tools tools, LongSupplier restS) {
    this.tools = tools;
    this.restS = restS;
  }

  /** The clock that runs down, large, over a bar for the whole rest. */
  void paint(Graphics2D g, int width, int height) {
    Palette palette = tools.palette();
    g.setColor(WindowTheme.colour(palette.ground()));
    g.fillRect(0, 0, width, height);
    g.setColor(WindowTheme.colour(palette.ink()));
    g.setFont(WindowTheme.font(true, 72));
    g.drawString(tools.numbers().clock(restS.getAsLong() * 1000.0), 0, 84);
    int bar = Math.min(width, BAR_WIDTH);
    g.setColor(WindowTheme.colour(palette.edge()));
    g.fillRect(0, 108, bar, 14);
    g.setColor(WindowTheme.colour(palette.groundOf(Tone.CAUTION)));
    g.fillRect(0, 108, (int) (bar * restS.getAsLong() * 1000 / TripsInARow.REST_MILLIS), 14);
  }
}
