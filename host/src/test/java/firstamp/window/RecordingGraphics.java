package firstamp.window;

import java.awt.Color;
import java.awt.Composite;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.GraphicsConfiguration;
import java.awt.Image;
import java.awt.Paint;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.font.FontRenderContext;
import java.awt.font.GlyphVector;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.awt.image.BufferedImageOp;
import java.awt.image.ImageObserver;
import java.awt.image.RenderedImage;
import java.awt.image.renderable.RenderableImage;
import java.text.AttributedCharacterIterator;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Paints as another does and notes every text with its ink: what a layout cannot tell. */
public final class RecordingGraphics extends Graphics2D {
  private final Graphics2D to;
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
    this.to = to;
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

  @Override
  public void draw(Shape s) {
    to.draw(s);
  }

  @Override
  public boolean drawImage(Image img, AffineTransform xform, ImageObserver obs) {
    return to.drawImage(img, xform, obs);
  }

  @Override
  public void drawImage(BufferedImage img, BufferedImageOp op, int x, int y) {
    to.drawImage(img, op, x, y);
  }

  @Override
  public void drawRenderedImage(RenderedImage img, AffineTransform xform) {
    to.drawRenderedImage(img, xform);
  }

  @Override
  public void drawRenderableImage(RenderableImage img, AffineTransform xform) {
    to.drawRenderableImage(img, xform);
  }

  @Override
  public void fill(Shape s) {
    to.fill(s);
  }

  @Override
  public boolean hit(Rectangle rect, Shape s, boolean onStroke) {
    return to.hit(rect, s, onStroke);
  }

  @Override
  public GraphicsConfiguration getDeviceConfiguration() {
    return to.getDeviceConfiguration();
  }

  @Override
  public void setComposite(Composite comp) {
    to.setComposite(comp);
  }

  @Override
  public void setPaint(Paint paint) {
    to.setPaint(paint);
  }

  @Override
  public void setStroke(Stroke s) {
    to.setStroke(s);
  }

  @Override
  public void setRenderingHint(RenderingHints.Key key, Object value) {
    to.setRenderingHint(key, value);
  }

  @Override
  public Object getRenderingHint(RenderingHints.Key key) {
    return to.getRenderingHint(key);
  }

  @Override
  public void setRenderingHints(Map<?, ?> hints) {
    to.setRenderingHints(hints);
  }

  @Override
  public void addRenderingHints(Map<?, ?> hints) {
    to.addRenderingHints(hints);
  }

  @Override
  public RenderingHints getRenderingHints() {
    return to.getRenderingHints();
  }

  @Override
  public void translate(int x, int y) {
    to.translate(x, y);
  }

  @Override
  public void translate(double tx, double ty) {
    to.translate(tx, ty);
  }

  @Override
  public void rotate(double theta) {
    to.rotate(theta);
  }

  @Override
  public void rotate(double theta, double x, double y) {
    to.rotate(theta, x, y);
  }

  @Override
  public void scale(double sx, double sy) {
    to.scale(sx, sy);
  }

  @Override
  public void shear(double shx, double shy) {
    to.shear(shx, shy);
  }

  @Override
  public void transform(AffineTransform tx) {
    to.transform(tx);
  }

  @Override
  public void setTransform(AffineTransform tx) {
    to.setTransform(tx);
  }

  @Override
  public AffineTransform getTransform() {
    return to.getTransform();
  }

  @Override
  public Paint getPaint() {
    return to.getPaint();
  }

  @Override
  public Composite getComposite() {
    return to.getComposite();
  }

  @Override
  public void setBackground(Color color) {
    to.setBackground(color);
  }

  @Override
  public Color getBackground() {
    return to.getBackground();
  }

  @Override
  public Stroke getStroke() {
    return to.getStroke();
  }

  @Override
  public void clip(Shape s) {
    to.clip(s);
  }

  @Override
  public FontRenderContext getFontRenderContext() {
    return to.getFontRenderContext();
  }

  @Override
  public Color getColor() {
    return to.getColor();
  }

  @Override
  public void setColor(Color c) {
    to.setColor(c);
  }

  @Override
  public void setPaintMode() {
    to.setPaintMode();
  }

  @Override
  public void setXORMode(Color c) {
    to.setXORMode(c);
  }

  @Override
  public Font getFont() {
    return to.getFont();
  }

  @Override
  public void setFont(Font font) {
    to.setFont(font);
  }

  @Override
  public FontMetrics getFontMetrics(Font f) {
    return to.getFontMetrics(f);
  }

  @Override
  public Rectangle getClipBounds() {
    return to.getClipBounds();
  }

  @Override
  public void clipRect(int x, int y, int width, int height) {
    to.clipRect(x, y, width, height);
  }

  @Override
  public void setClip(int x, int y, int width, int height) {
    to.setClip(x, y, width, height);
  }

  @Override
  public Shape getClip() {
    return to.getClip();
  }

  @Override
  public void setClip(Shape clip) {
    to.setClip(clip);
  }

  @Override
  public void copyArea(int x, int y, int width, int height, int dx, int dy) {
    to.copyArea(x, y, width, height, dx, dy);
  }

  @Override
  public void drawLine(int x1, int y1, int x2, int y2) {
    to.drawLine(x1, y1, x2, y2);
  }

  @Override
  public void fillRect(int x, int y, int width, int height) {
    to.fillRect(x, y, width, height);
  }

  @Override
  public void clearRect(int x, int y, int width, int height) {
    to.clearRect(x, y, width, height);
  }

  @Override
  public void drawRoundRect(int x, int y, int width, int height, int arcWidth, int arcHeight) {
    to.drawRoundRect(x, y, width, height, arcWidth, arcHeight);
  }

  @Override
  public void fillRoundRect(int x, int y, int width, int height, int arcWidth, int arcHeight) {
    to.fillRoundRect(x, y, width, height, arcWidth, arcHeight);
  }

  @Override
  public void drawOval(int x, int y, int width, int height) {
    to.drawOval(x, y, width, height);
  }

  @Override
  public void fillOval(int x, int y, int width, int height) {
    to.fillOval(x, y, width, height);
  }

  @Override
  public void drawArc(int x, int y, int width, int height, int startAngle, int arcAngle) {
    to.drawArc(x, y, width, height, startAngle, arcAngle);
  }

  @Override
  public void fillArc(int x, int y, int width, int height, int startAngle, int arcAngle) {
    to.fillArc(x, y, width, height, startAngle, arcAngle);
  }

  @Override
  public void drawPolyline(int[] xPoints, int[] yPoints, int nPoints) {
    to.drawPolyline(xPoints, yPoints, nPoints);
  }

  @Override
  public void drawPolygon(int[] xPoints, int[] yPoints, int nPoints) {
    to.drawPolygon(xPoints, yPoints, nPoints);
  }

  @Override
  public void fillPolygon(int[] xPoints, int[] yPoints, int nPoints) {
    to.fillPolygon(xPoints, yPoints, nPoints);
  }

  @Override
  public boolean drawImage(Image img, int x, int y, ImageObserver observer) {
    return to.drawImage(img, x, y, observer);
  }

  @Override
  public boolean drawImage(Image img, int x, int y, int width, int height, ImageObserver observer) {
    return to.drawImage(img, x, y, width, height, observer);
  }

  @Override
  public boolean drawImage(Image img, int x, int y, Color bgcolor, ImageObserver observer) {
    return to.drawImage(img, x, y, bgcolor, observer);
  }

  @Override
  public boolean drawImage(
      Image img, int x, int y, int width, int height, Color bgcolor, ImageObserver observer) {
    return to.drawImage(img, x, y, width, height, bgcolor, observer);
  }

  @Override
  public boolean drawImage(
      Image img,
      int dx1,
      int dy1,
      int dx2,
      int dy2,
      int sx1,
      int sy1,
      int sx2,
      int sy2,
      ImageObserver observer) {
    return to.drawImage(img, dx1, dy1, dx2, dy2, sx1, sy1, sx2, sy2, observer);
  }

  @Override
  public boolean drawImage(
      Image img,
      int dx1,
      int dy1,
      int dx2,
      int dy2,
      int sx1,
      int sy1,
      int sx2,
      int sy2,
      Color bgcolor,
      ImageObserver observer) {
    return to.drawImage(img, dx1, dy1, dx2, dy2, sx1, sy1, sx2, sy2, bgcolor, observer);
  }

  @Override
  public void dispose() {
    to.dispose();
  }
}
