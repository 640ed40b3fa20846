package firstamp.window.widgets;

import java.util.function.Supplier;

/** The shape of a state at the left of a page's headline, on the state's ground. */
public final class StateShape {
  private static final int SIDE = 56;
  private static final int SHAPE = 40;

  private StateShape() {}

  /**
   * A canvas with the shape.
   *
   * @param name of the canvas
   * @param palette of the page
   * @param tone asked for at each painting
   */
  public static Canvas canvas(String name, Palette palette, Supplier<Tone> tone) {
    return new Canvas(
        name,
        SIDE,
        SIDE,
        (g, w, h) -> {
          Tone now = tone.get();
          g.setColor(WindowTheme.colour(palette.groundOf(now)));
          g.fillRect(0, 0, w, h);
          g.setColor(WindowTheme.colour(palette.inkOn(now)));
          Shapes.draw(g, now, 8, Math.max(2, (h - SHAPE) / 2.0), SHAPE);
        });
  }
}
