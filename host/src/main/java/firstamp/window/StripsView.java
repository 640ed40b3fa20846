package firstamp.window;

import firstamp.session.Snapshot;
import firstamp.window.BenchView.EventMark;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/** The strips with the lane of events above them; takes pointer, wheel and drag. */
final class StripsView {
  private static final int LANE = 24;

  private final Palette palette;
  private final Words words;
  private final StripMaker maker;
  private final StripChart chart;
  private final TimeView time;
  private final PointerPresenter pointers;
  private final Consumer<String> say;
  private final Canvas canvas;
  private Snapshot now;
  private StripsPicture picture;
  private Double pointerMs;
  private Double dragFromMs;
  private double panFromX;

  StripsView(Palette palette, Words words, Numbers numbers, TimeView time, Consumer<String> say) {
    this.palette = palette;
    this.words = words;
    this.time = time;
    this.say = say;
    maker = new StripMaker(words, numbers);
    chart = new StripChart(palette, numbers);
    pointers = new PointerPresenter(words, numbers);
    canvas = new Canvas("strips", 700, 300, this::paint);
    canvas.say(words.get("strip.accessible"));
    Mouse mouse = new Mouse();
    canvas.addMouseListener(mouse);
    canvas.addMouseMotionListener(mouse);
    canvas.addMouseWheelListener(mouse);
  }

  Canvas component() {
    return canvas;
  }

  StripChart chart() {
    return chart;
  }

  /** Takes the newest snapshot and paints. */
  void show(Snapshot snapshot) {
    now = snapshot;
    time.advance(snapshot.nowMs(), snapshot.closedMs());
    int pixels = Math.max(100, canvas.getWidth());
    picture = maker.picture(snapshot, time, pixels);
    if (pointerMs != null && dragFromMs == null) {
      tell();
    }
    canvas.repaint();
  }

  private void paint(Graphics2D g, int width, int height) {
    g.setColor(WindowTheme.colour(palette.ground()));
    g.fillRect(0, 0, width, height);
    if (picture == null) {
      return;
    }
    String axis = words.get(picture.zeroIsOn() ? "strip.zeroOn" : "strip.zeroNow");
    chart.draw(g, new Rectangle2D.Double(0, LANE, width, height - LANE), picture, axis);
    lane(g, width);
    pointer(g);
  }

  private void lane(Graphics2D g, int width) {
    Font font = WindowTheme.font(true, 13);
    g.setFont(font);
    for (EventMark event : picture.events()) {
      if (inSight(event)) {
        double x = chart.xOf(event.ms());
        g.setColor(WindowTheme.colour(palette.ink()));
        g.setStroke(new BasicStroke(1.4f));
        g.draw(new Line2D.Double(x, 4, x, LANE + 1));
      }
    }
    List<double[]> taken = new ArrayList<>();
    for (boolean states : new boolean[] {true, false}) {
      for (EventMark event : picture.events()) {
        if (inSight(event) && states == hasState(event)) {
          label(g, event, width, taken);
        }
      }
    }
  }

  private boolean inSight(EventMark event) {
    double x = chart.xOf(event.ms());
    return x >= chart.dataArea().getX() - 1 && x <= chart.dataArea().getMaxX() + 1;
  }

  private static boolean hasState(EventMark event) {
    return event.tone() == Tone.ALARM || event.tone() == Tone.CAUTION;
  }

  /** Words of an event, unless others already stand there; alarms come first. */
  private void label(Graphics2D g, EventMark event, int width, List<double[]> taken) {
    int whole = g.getFontMetrics().stringWidth(event.text()) + (hasState(event) ? 30 : 12);
    double x = chart.xOf(event.ms());
    double at = x + whole > width ? x - whole : x + 4;
    for (double[] other : taken) {
      if (at < other[1] && at + whole > other[0]) {
        return;
      }
    }
    taken.add(new double[] {at, at + whole});
    boolean state = hasState(event);
    g.setColor(WindowTheme.colour(state ? palette.groundOf(event.tone()) : palette.ground()));
    g.fill(new Rectangle2D.Double(at - 1, 3, whole - 2, 19));
    g.setColor(WindowTheme.colour(state ? palette.inkOn(event.tone()) : palette.ink()));
    if (state) {
      Shapes.draw(g, event.tone(), at + 4, 6, 12);
    }
    g.drawString(event.text(), (float) at + (state ? 21 : 2), 17);
  }

  private void pointer(Graphics2D g) {
    if (pointerMs == null) {
      return;
    }
    Rectangle2D area = chart.dataArea();
    double x = chart.xOf(pointerMs);
    g.setColor(WindowTheme.colour(palette.ink()));
    g.setStroke(new BasicStroke(1, 0, 1, 1, new float[] {3, 3}, 0));
    g.draw(new Line2D.Double(x, area.getMinY(), x, area.getMaxY()));
    if (dragFromMs != null) {
      double from = chart.xOf(dragFromMs);
      Color soft = WindowTheme.colour(palette.focus());
      g.setColor(new Color(soft.getRed(), soft.getGreen(), soft.getBlue(), 46));
      g.fill(
          new Rectangle2D.Double(
              Math.min(from, x), area.getMinY(), Math.abs(x - from), area.getHeight()));
    }
  }

  private void tell() {
    if (now == null || pointerMs == null) {
      say.accept(words.get("pointer.none"));
    } else if (dragFromMs != null) {
      say.accept(pointers.span(now, dragFromMs, pointerMs));
    } else {
      say.accept(pointers.at(now, pointerMs, picture.columnMs()));
    }
  }

  /**
   * Pointer: move = values, drag = from here to here, wheel = less or more time, right drag = pan.
   */
  private final class Mouse extends MouseAdapter {
    @Override
    public void mouseMoved(MouseEvent event) {
      pointerMs = chart.timeAt(event.getX());
      dragFromMs = null;
      tell();
      canvas.repaint();
    }

    @Override
    public void mouseExited(MouseEvent event) {
      if (dragFromMs == null) {
        pointerMs = null;
        tell();
        canvas.repaint();
      }
    }

    @Override
    public void mousePressed(MouseEvent event) {
      panFromX = event.getX();
    }

    @Override
    public void mouseDragged(MouseEvent event) {
      if ((event.getModifiersEx() & MouseEvent.BUTTON1_DOWN_MASK) == 0) {
        double width = Math.max(1, chart.dataArea().getWidth());
        time.pan((panFromX - event.getX()) / width);
        panFromX = event.getX();
      } else {
        if (dragFromMs == null) {
          dragFromMs = chart.timeAt(panFromX);
        }
        pointerMs = chart.timeAt(event.getX());
        tell();
      }
      canvas.repaint();
    }

    @Override
    public void mouseWheelMoved(MouseWheelEvent event) {
      double factor = Math.pow(1.25, event.getPreciseWheelRotation());
      time.zoom(factor, time.follows() ? time.toMs() : chart.timeAt(event.getX()));
    }
  }
}
