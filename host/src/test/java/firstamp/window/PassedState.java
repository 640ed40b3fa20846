package firstamp.window;

import java.awt.Color;
import java.awt.Composite;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.GraphicsConfiguration;
import java.awt.Paint;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.util.Map;

/** Passes the state of painting on to another: paint, stroke, font, transform and clip. */
abstract class PassedState extends Graphics2D {
  final Graphics2D to;

  PassedState(Graphics2D to) {
    this.to = to;
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
  public void dispose() {
    to.dispose();
  }
}
