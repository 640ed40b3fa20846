package firstamp.window.strips;

import firstamp.bench.Snapshot;
import firstamp.model.LimitKind;
import firstamp.run.LimitMove;
import firstamp.window.present.Limit;
import firstamp.window.present.LimitPresenter;
import firstamp.window.present.PointerPresenter;
import firstamp.window.widgets.Canvas;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.awt.Cursor;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.awt.geom.Rectangle2D;
import java.util.List;
import java.util.function.Consumer;

/** The strips with the lane of events above them; takes pointer, wheel and drag. */
public final class StripsView {
  /** Lower than this, two strips are shown: more could not be read. */
  private static final int FOLDED_HEIGHT = 350;

  /** Before the end of a trace: its name, and the name of a band that had no room until now. */
  private static final int NAME_ROOM = 300;

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
  private final EventLanePainter lanePainter;
  private final LimitLines limitLines;
  private final PointerPainter pointerPainter;
  private final PictureRate rate = new PictureRate();
  private final Canvas canvas;
  private Snapshot now;
  private StripsPicture picture;
  private Double pointerMs;
  private Double dragFromMs;
  private double panFromX;
  private boolean limitDragged;

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
    lanePainter = new EventLanePainter(palette, chart);
    pointerPainter = new PointerPainter(palette, chart);
    limitLines = new LimitLines(palette, limitWords, chart);
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
    time.advance(snapshot.times().nowMs(), snapshot.times().closedMs());
    if (!rate.due(snapshot, time, Math.max(100, canvas.getWidth())) && picture != null) {
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
    time.advance(snapshot.times().nowMs(), snapshot.times().closedMs());
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
    chart.draw(
        g,
        new Rectangle2D.Double(0, EventLanePainter.HEIGHT, width, height - EventLanePainter.HEIGHT),
        picture,
        axis);
    lanePainter.paint(g, width, picture.events());
    pointerPainter.paint(g, dragFromMs, pointerMs);
    limitLines.paint(g, editor.held(), editor.value(), picture.limits());
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
      boolean overLimit = limitLines.at(event.getY(), limits()) != null;
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
      Limit limit =
          event.getButton() == MouseEvent.BUTTON1 ? limitLines.at(event.getY(), limits()) : null;
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
