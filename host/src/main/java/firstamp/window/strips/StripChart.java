package firstamp.window.strips;

import firstamp.window.present.Limit;
import firstamp.window.strips.StripsPicture.Strip;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Numbers;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.text.FieldPosition;
import java.text.NumberFormat;
import java.text.ParsePosition;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.CrosshairState;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.AbstractXYItemRenderer;
import org.jfree.chart.renderer.xy.XYItemRendererState;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.AbstractXYDataset;
import org.jfree.data.xy.XYDataset;

/**
 * The strips over one time axis, laid out and drawn by the chart library with none of its defaults
 * left: our own decimation, our own marks.
 *
 * <p>Swing thread only.
 */
public final class StripChart {
  private static final int MOST_LABELS = 11;
  private static final double GAP = 5;

  private final Palette palette;
  private final Numbers numbers;
  private final StripPainter painter;
  private final NumberAxis time = new NumberAxis();
  private final CombinedDomainXYPlot plot = new CombinedDomainXYPlot(time);
  private final JFreeChart chart;
  private final List<Pane> panes = new ArrayList<>();
  private Rectangle2D dataArea = new Rectangle2D.Double();
  private StripsPicture shown;

  public StripChart(Palette palette, Numbers numbers) {
    this.palette = palette;
    this.numbers = numbers;
    this.painter = new StripPainter(palette);
    styleTime();
    plot.setGap(GAP);
    plot.setInsets(RectangleInsets.ZERO_INSETS);
    plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
    stylePlot(plot);
    chart = new JFreeChart(null, null, plot, false);
    chart.setBackgroundPaint(colour(palette.ground()));
    chart.setPadding(RectangleInsets.ZERO_INSETS);
    chart.setBorderVisible(false);
    chart.setAntiAlias(true);
  }

  private static Color colour(int rgb) {
    return WindowTheme.colour(rgb);
  }

  private void styleTime() {
    time.setAutoRange(false);
    time.setTickLabelFont(WindowTheme.font(false, 14f));
    time.setTickLabelPaint(colour(palette.ink()));
    time.setAxisLineVisible(false);
    time.setTickMarkPaint(colour(palette.edge()));
    time.setTickMarkOutsideLength(4f);
    time.setMinorTickMarksVisible(false);
    time.setLabelFont(WindowTheme.font(false, 13f));
    time.setLabelPaint(colour(palette.quietInk()));
    time.setLabelInsets(new RectangleInsets(0, 0, 0, 0));
    time.setLowerMargin(0);
    time.setUpperMargin(0);
  }

  private void stylePlot(XYPlot one) {
    one.setBackgroundPaint(colour(palette.ground()));
    one.setOutlineVisible(false);
    one.setDomainGridlinesVisible(false);
    one.setRangeGridlinesVisible(false);
    one.setDomainZeroBaselineVisible(false);
    one.setRangeZeroBaselineVisible(false);
  }

  /** Draws a picture; {@code axisLabel} says what the axis counts. */
  public void draw(Graphics2D g, Rectangle2D area, StripsPicture picture, String axisLabel) {
    shown = picture;
    fit(picture.strips());
    double zero = picture.zeroMs();
    time.setRange((picture.fromMs() - zero) / 1000, (picture.toMs() - zero) / 1000);
    double step = TimeTicks.stepS((picture.toMs() - picture.fromMs()) / 1000, MOST_LABELS);
    time.setTickUnit(new NumberTickUnit(step, new TimeFormat(step, numbers)), false, true);
    time.setLabel(axisLabel);
    PlotRenderingInfo info = null;
    org.jfree.chart.ChartRenderingInfo whole = new org.jfree.chart.ChartRenderingInfo(null);
    chart.draw(g, area, whole);
    info = whole.getPlotInfo();
    dataArea = info.getDataArea();
  }

  /** Whether it was drawn before: only then a time has its point. */
  boolean drawn() {
    return shown != null;
  }

  /** Course time at a point of the last drawing. */
  double timeAt(double x) {
    if (shown == null || dataArea.getWidth() <= 0) {
      return 0;
    }
    double share = (x - dataArea.getX()) / dataArea.getWidth();
    return shown.fromMs() + share * (shown.toMs() - shown.fromMs());
  }

  /** Point of a course time in the last drawing. */
  double xOf(double ms) {
    double share = (ms - shown.fromMs()) / (shown.toMs() - shown.fromMs());
    return dataArea.getX() + share * dataArea.getWidth();
  }

  /** Where a limit's strip stands in the last drawing; null = it is not there. */
  public Rectangle2D areaOf(Limit limit) {
    for (Pane pane : panes) {
      for (StripsPicture.Level level : pane.strip.levels()) {
        if (limit.same(level.limit())) {
          return pane.area;
        }
      }
    }
    return null;
  }

  /** Height of a place of a strip. */
  public static double yOf(Rectangle2D area, double place) {
    return area.getMaxY() - 2 - place * (area.getHeight() - 4);
  }

  /** Place of a height in a strip. */
  static double placeOf(Rectangle2D area, double y) {
    return (area.getMaxY() - 2 - y) / Math.max(1, area.getHeight() - 4);
  }

  Rectangle2D dataArea() {
    return dataArea;
  }

  public JFreeChart chart() {
    return chart;
  }

  private void fit(List<Strip> strips) {
    boolean same = panes.size() == strips.size();
    for (int at = 0; same && at < panes.size(); at++) {
      same = panes.get(at).weight == strips.get(at).weight();
    }
    if (!same) {
      for (Pane pane : panes) {
        plot.remove(pane.plot);
      }
      panes.clear();
      for (Strip strip : strips) {
        Pane pane = new Pane(strip.weight());
        panes.add(pane);
        plot.add(pane.plot, strip.weight());
      }
    }
    for (int at = 0; at < panes.size(); at++) {
      panes.get(at).strip = strips.get(at);
    }
  }

  /** One strip as a plot of the library. */
  private final class Pane {
    private final int weight;
    private final XYPlot plot;
    private Strip strip;
    private Rectangle2D area = new Rectangle2D.Double();

    Pane(int weight) {
      this.weight = weight;
      NumberAxis scale = new NumberAxis();
      scale.setVisible(false);
      scale.setAutoRange(false);
      scale.setRange(0, 1);
      plot = new XYPlot(new OneItem(), null, scale, new Renderer(this));
      plot.setInsets(RectangleInsets.ZERO_INSETS);
      plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
      stylePlot(plot);
    }
  }

  /** The library asks a data set whether there is anything to draw; a strip always is. */
  private static final class OneItem extends AbstractXYDataset {
    private static final long serialVersionUID = 1L;

    @Override
    public int getSeriesCount() {
      return 1;
    }

    @Override
    public Comparable<String> getSeriesKey(int series) {
      return "strip";
    }

    @Override
    public int getItemCount(int series) {
      return 1;
    }

    @Override
    public Number getX(int series, int item) {
      return 0;
    }

    @Override
    public Number getY(int series, int item) {
      return 0;
    }
  }

  /** Paints a whole strip where the library would paint an item. */
  private final class Renderer extends AbstractXYItemRenderer {
    private static final long serialVersionUID = 1L;
    private final transient Pane pane;

    Renderer(Pane pane) {
      this.pane = pane;
    }

    @Override
    public XYItemRendererState initialise(
        Graphics2D g, Rectangle2D area, XYPlot on, XYDataset data, PlotRenderingInfo info) {
      XYItemRendererState state = new XYItemRendererState(info);
      state.setProcessVisibleItemsOnly(false);
      return state;
    }

    @Override
    public void drawItem(
        Graphics2D g,
        XYItemRendererState state,
        Rectangle2D area,
        PlotRenderingInfo info,
        XYPlot on,
        ValueAxis domain,
        ValueAxis range,
        XYDataset data,
        int series,
        int item,
        CrosshairState crosshair,
        int pass) {
      pane.area = area;
      painter.paint(g, area, pane.strip, shown);
    }
  }

  /** Times under the axis. */
  private static final class TimeFormat extends NumberFormat {
    private static final long serialVersionUID = 1L;
    private final double stepS;
    private final transient Numbers numbers;

    TimeFormat(double stepS, Numbers numbers) {
      this.stepS = stepS;
      this.numbers = numbers;
    }

    @Override
    public StringBuffer format(double value, StringBuffer to, FieldPosition position) {
      return to.append(TimeTicks.label(value, stepS, numbers));
    }

    @Override
    public StringBuffer format(long value, StringBuffer to, FieldPosition position) {
      return format((double) value, to, position);
    }

    @Override
    public Number parse(String text, ParsePosition position) {
      throw new UnsupportedOperationException("times are only written");
    }
  }
}
