package firstamp.window.strips;

import firstamp.bench.Snapshot;
import firstamp.model.LimitKind;
import firstamp.run.LimitMove;
import firstamp.trend.TimeCourse;
import firstamp.window.present.BenchView.EventMark;
import firstamp.window.present.Limit;
import firstamp.window.present.LimitPresenter;
import firstamp.window.present.PointerPresenter;
import firstamp.window.widgets.Canvas;
import firstamp.window.widgets.LaneScale;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.Shapes;
import firstamp.window.widgets.Tone;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Cursor;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/** The strips with the lane of events above them; takes pointer, wheel and drag. */
public final class StripsView {
  private static final int LANE = 24;

  /** Lower than this, two strips are shown: more could not be read. */
  private static final int FOLDED_HEIGHT = 350;

  /** At the right a limit has its words and the scale its values. */
  private static final int WORDS_ROOM = 260;

  /** Before the end of a trace: its name, and the name of a band that had no room until now. */
  private static final int NAME_ROOM = 300;

  private static final int NEAR_POINTS = 6;

  /** From this width of a column on, four pictures a second are made. */
  private static final double WIDE_COLUMN_MS = 600;

  private static final double WIDE_PICTURE_MS = 230;

  private final Palette palette;
  private final Words words;
  private final StripMaker maker;
  private final StripChart chart;
  private final TimeView time;
  private final PointerPresenter pointers;
  private final Consumer<String> say;
  private final Consumer<LimitMove> wish;
  private final LimitPresenter limitWords;
  private final LimitEditor editor = new LimitEditor();
  private final Canvas canvas;
  private Snapshot now;
  private StripsPicture picture;
  private Double pointerMs;
  private Double dragFromMs;
  private double panFromX;
  private boolean limitDragged;
  private double builtMs = Double.NaN;
  private double builtWidthMs;
  private int builtPixels;
  private TimeCourse builtCourse;
  private Snapshot.Phase builtPhase;
  private boolean builtFollows;

  public StripsView(
      Palette palette,
      Words words,
      Numbers numbers,
      TimeView time,
      Consumer<String> say,
      Consumer<LimitMove> wish) {
    this.wish = wish;
    limitWords = new LimitPresenter(words, numbers);
    this.palette = palette;
    this.words = words;
    this.time = time;
    this.say = say;
    maker = new StripMaker(words, numbers);
    chart = new StripChart(palette, numbers);
    pointers = new PointerPresenter(words, numbers);
    canvas = new Canvas("strips", 700, 240, this::paint);
    canvas.say(words.get("strip.accessible"));
    Mouse mouse = new Mouse();
    canvas.addMouseListener(mouse);
    canvas.addMouseMotionListener(mouse);
    canvas.addMouseWheelListener(mouse);
  }

  public Canvas component() {
    return canvas;
  }

  public StripChart chart() {
    return chart;
  }

  /** Takes the newest snapshot and paints what has changed. */
  public void show(Snapshot snapshot) {
    now = snapshot;
    time.advance(snapshot.nowMs(), snapshot.closedMs());
    if (!due(snapshot, Math.max(100, canvas.getWidth()))) {
      return;
    }
    Rectangle dirty = take(snapshot);
    if (pointerMs != null && dragFromMs == null && !limitDragged) {
      tell();
    }
    canvas.repaint(dirty.x, dirty.y, dirty.width, dirty.height);
  }

  /** Makes the picture of a snapshot; what of the canvas has to be painted for it. */
  public Rectangle take(Snapshot snapshot) {
    now = snapshot;
    time.advance(snapshot.nowMs(), snapshot.closedMs());
    StripsPicture before = picture;
    maker.openTo(heldAmps());
    picture = maker.picture(snapshot, time, Math.max(100, canvas.getWidth()));
    if (canvas.getHeight() > 0 && canvas.getHeight() < FOLDED_HEIGHT) {
      picture = picture.folded(snapshot);
    }
    return changed(PictureChange.from(before, picture));
  }

  /** The limits drawn now. */
  public List<Limit> limits() {
    return picture == null ? List.of() : picture.limits();
  }

  /** Where hours are in view a column stands for seconds: four pictures a second are enough. */
  private boolean due(Snapshot snapshot, int pixels) {
    boolean same =
        picture != null
            && builtWidthMs == time.widthMs()
            && builtPixels == pixels
            && snapshot.course() == builtCourse
            && snapshot.phase() == builtPhase
            && time.follows() == builtFollows
            && snapshot.kind() != Snapshot.Kind.REPLAY;
    if (same && time.widthMs() / pixels > WIDE_COLUMN_MS) {
      double since = snapshot.nowMs() - builtMs;
      if (since >= 0 && since < WIDE_PICTURE_MS) {
        return false;
      }
    }
    builtMs = snapshot.nowMs();
    builtWidthMs = time.widthMs();
    builtPixels = pixels;
    builtCourse = snapshot.course();
    builtPhase = snapshot.phase();
    builtFollows = time.follows();
    return true;
  }

  private Rectangle changed(int column) {
    Rectangle all = new Rectangle(0, 0, canvas.getWidth(), canvas.getHeight());
    boolean whole = column == PictureChange.ALL || !chart.drawn();
    if (whole || pointerMs != null || editor.held() != null) {
      return all;
    }
    if (column == Integer.MAX_VALUE) {
      return new Rectangle();
    }
    // Names stand beside the ends of the traces.
    int x = (int) chart.xOf(picture.firstMs() + column * picture.columnMs()) - NAME_ROOM;
    return all.intersection(new Rectangle(Math.max(0, x), 0, all.width, all.height));
  }

  /** Takes hold of the next limit by key; of none behind the last. */
  public void nextLimit() {
    if (picture != null) {
      editor.next(picture.limits());
      tellLimit(true);
      open();
    }
  }

  /** Whether a limit is held by key. */
  public boolean holdsLimit() {
    return editor.held() != null && !limitDragged;
  }

  /** Moves the limit held by a step. */
  public void nudgeLimit(int steps) {
    editor.nudge(steps);
    tellLimit(true);
    open();
  }

  /** Opens the scale to the limit that is held by key, or closes it again. */
  private void open() {
    take(now);
    canvas.repaint();
  }

  private double heldAmps() {
    Limit limit = holdsLimit() ? editor.held() : null;
    return limit == null || limit.kind() != LimitKind.RUNNING_A
        ? 0
        : Math.max(limit.value(), editor.value());
  }

  /** Wishes for the limit held, or lets go. */
  public void takeLimit(boolean yes) {
    LimitMove move = yes ? editor.take() : null;
    editor.drop();
    say.accept(words.get("pointer.none"));
    open();
    if (move != null) {
      wish.accept(move);
    }
  }

  private void tellLimit(boolean byKeys) {
    say.accept(
        editor.held() == null
            ? words.get("pointer.none")
            : limitWords.moving(editor.held(), editor.value(), byKeys));
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
    heldLimit(g);
  }

  private void lane(Graphics2D g, int width) {
    Font font = WindowTheme.font(true, 15);
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

  /** The limit that is being moved: a strong line with its value. */
  private void heldLimit(Graphics2D g) {
    Limit limit = editor.held();
    Rectangle2D area = limit == null ? null : chart.areaOf(limit);
    if (area == null) {
      return;
    }
    LaneScale scale = drawn(limit).scale();
    double signed = Math.copySign(editor.value(), scale.valueAt(0.9));
    double y = StripChart.yOf(area, scale.place(signed));
    g.setColor(WindowTheme.colour(palette.focus()));
    g.setStroke(new BasicStroke(3));
    g.draw(new Line2D.Double(area.getX(), y, area.getMaxX(), y));
    g.setFont(WindowTheme.font(true, 15));
    // What the keys do stands below the strips.
    String text = limitWords.moving(limit, editor.value(), false);
    int width = g.getFontMetrics().stringWidth(text);
    double base = y > area.getMinY() + 24 ? y - 6 : y + 18;
    // Clear of the words that the limit has anyway.
    double left =
        Math.max(
            area.getX() + StripWords.PAD,
            Math.min(area.getCenterX() - width / 2.0, area.getMaxX() - WORDS_ROOM - width));
    g.setColor(WindowTheme.colour(palette.surface()));
    g.fill(new Rectangle2D.Double(left - 4, base - 15, width + 8, 19));
    g.setColor(WindowTheme.colour(palette.ink()));
    g.drawString(text, (float) left, (float) base);
  }

  /** The limit as it is drawn now: its scale may have changed since it was taken hold of. */
  private Limit drawn(Limit held) {
    return picture.limits().stream().filter(held::same).findFirst().orElse(held);
  }

  /** The limit whose line is under the pointer; null = none. */
  private Limit limitAt(double y) {
    if (picture == null) {
      return null;
    }
    Limit nearest = null;
    double best = NEAR_POINTS;
    for (Limit limit : picture.limits()) {
      Rectangle2D area = chart.areaOf(limit);
      double signed = Math.copySign(limit.value(), limit.scale().valueAt(0.9));
      double distance =
          area == null ? best : Math.abs(y - StripChart.yOf(area, limit.scale().place(signed)));
      if (distance < best) {
        nearest = limit;
        best = distance;
      }
    }
    return nearest;
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
      boolean overLimit = limitAt(event.getY()) != null;
      canvas.setCursor(
          Cursor.getPredefinedCursor(overLimit ? Cursor.N_RESIZE_CURSOR : Cursor.DEFAULT_CURSOR));
      tell();
      canvas.repaint();
    }

    @Override
    public void mouseReleased(MouseEvent event) {
      if (limitDragged) {
        LimitMove move = editor.take();
        limitDragged = false;
        canvas.repaint();
        if (move != null) {
          wish.accept(move);
        }
      }
    }

    @Override
    public void mouseExited(MouseEvent event) {
      if (dragFromMs == null && !limitDragged) {
        pointerMs = null;
        tell();
        canvas.repaint();
      }
    }

    @Override
    public void mousePressed(MouseEvent event) {
      panFromX = event.getX();
      Limit limit = event.getButton() == MouseEvent.BUTTON1 ? limitAt(event.getY()) : null;
      if (limit != null) {
        editor.hold(limit);
        limitDragged = true;
      }
    }

    @Override
    public void mouseDragged(MouseEvent event) {
      if (limitDragged) {
        Rectangle2D area = chart.areaOf(editor.held());
        if (area != null) {
          double place = StripChart.placeOf(area, event.getY());
          editor.moveTo(Math.abs(editor.held().scale().valueAt(place)));
        }
        tellLimit(false);
        canvas.repaint();
        return;
      }
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
