package firstamp.window;

import java.awt.Font;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.font.FontRenderContext;
import java.awt.font.GlyphVector;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.text.AttributedCharacterIterator;
import java.util.ArrayList;
import java.util.List;

/** Paints as another does and notes every text with its ink: what a layout cannot tell. */
public final class RecordingGraphics extends PassedShapes {
  private final List<Ink> inks;

  /**
   * A text that was painted.
   *
   * @param text itself
   * @param box around its ink, in pixels of the picture
   * @param clip of the area that it was painted into, in pixels of the picture
   * @param capPixels height of its capitals
   */
  public record Ink(String text, Rectangle2D box, Rectangle2D clip, double capPixels) {
    public boolean touches(Ink other, double gap) {
      return box.getX() - gap < other.box.getMaxX()
          && other.box.getX() - gap < box.getMaxX()
          && box.getY() - gap < other.box.getMaxY()
          && other.box.getY() - gap < box.getMaxY();
    }

    /** What of it cannot be seen, in pixels. */
    double cutOff() {
      double across = Math.max(clip.getX() - box.getX(), box.getMaxX() - clip.getMaxX());
      return Math.max(across, Math.max(clip.getY() - box.getY(), box.getMaxY() - clip.getMaxY()));
    }
  }

  private RecordingGraphics(Graphics2D to, List<Ink> inks) {
    super(to);
    this.inks = inks;
  }

  public static RecordingGraphics over(Graphics2D to) {
    return new RecordingGraphics(to, new ArrayList<>());
  }

  public List<Ink> inks() {
    return List.copyOf(inks);
  }

  private void note(String text, double x, double y) {
    if (text.isBlank()) {
      return;
    }
    FontRenderContext context = to.getFontRenderContext();
    Rectangle2D ink = to.getFont().createGlyphVector(context, text).getVisualBounds();
    note(
        text,
        new Rectangle2D.Double(x + ink.getX(), y + ink.getY(), ink.getWidth(), ink.getHeight()));
  }

  private void note(String text, Rectangle2D ink) {
    AffineTransform transform = to.getTransform();
    Rectangle2D box = transform.createTransformedShape(ink).getBounds2D();
    Shape clip = to.getClip();
    Rectangle2D room = clip == null ? box : transform.createTransformedShape(clip).getBounds2D();
    double cap = capHeight(to.getFont(), to.getFontRenderContext()) * transform.getScaleY();
    inks.add(new Ink(text, box, room, cap));
  }

  static double capHeight(Font font, FontRenderContext context) {
    return font.createGlyphVector(context, "H").getVisualBounds().getHeight();
  }

  @Override
  public Graphics create() {
    return new RecordingGraphics((Graphics2D) to.create(), inks);
  }

  @Override
  public void drawString(String text, int x, int y) {
    note(text, x, y);
    to.drawString(text, x, y);
  }

  @Override
  public void drawString(String text, float x, float y) {
    note(text, x, y);
    to.drawString(text, x, y);
  }

  @Override
  public void drawString(AttributedCharacterIterator text, int x, int y) {
    throw new UnsupportedOperationException("texts with attributes are not noted yet");
  }

  @Override
  public void drawString(AttributedCharacterIterator text, float x, float y) {
    throw new UnsupportedOperationException("texts with attributes are not noted yet");
  }

  @Override
  public void drawGlyphVector(GlyphVector glyphs, float x, float y) {
    Rectangle2D ink = glyphs.getVisualBounds();
    note(
        "glyphs",
        new Rectangle2D.Double(x + ink.getX(), y + ink.getY(), ink.getWidth(), ink.getHeight()));
    to.drawGlyphVector(glyphs, x, y);
  }
}
