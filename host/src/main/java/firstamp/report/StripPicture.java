package firstamp.report;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.geom.Rectangle2D;
import java.io.StringWriter;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.transform.OutputKeys;
import javax.xml.transform.Transformer;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.apache.batik.svggen.SVGIDGenerator;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYTitleAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.block.BlockBorder;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.DefaultXYDataset;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/**
 * Strips over one axis as SVG: name inside the strip, time below, one ink for every trace, an
 * earlier power-up thin and broken.
 */
final class StripPicture {
  static final Color SURFACE = new Color(0xFBFAF6);
  static final Color INK = new Color(0x17232C);
  static final Color QUIET = new Color(0x46525B);
  static final Color EDGE = new Color(0x7A7F80);
  static final Color STATE = new Color(0xA3291D);
  private static final Font TEXT = new Font(Font.SANS_SERIF, Font.PLAIN, 11);
  private static final Font NAME = new Font(Font.SANS_SERIF, Font.BOLD, 12);
  private static final int WIDTH = 720;
  private static final int STRIP_HEIGHT = 110;
  private static final int AXIS_HEIGHT = 50;
  private static final String SVG = "http://www.w3.org/2000/svg";

  private final String id;
  private final String axisName;
  private Level level;

  /** A picture; {@code id} keeps its inner names apart from those of the page's other pictures. */
  StripPicture(String id, String axisName) {
    this.id = id;
    this.axisName = axisName;
  }

  /**
   * Vertical line with words, in the colour of a state.
   *
   * @param x place on the common axis
   * @param words beside it
   */
  record Moment(double x, String words) {}

  /**
   * Horizontal line with words.
   *
   * @param y its height, in the unit of the strip
   * @param words above it
   */
  record Level(double y, String words) {}

  /** Draws a limit across the first strip; null = none. */
  StripPicture withLimit(Level limit) {
    level = limit;
    return this;
  }

  /** The chart without any of the library's own look; package-private for its test. */
  JFreeChart chart(List<Strip> strips, List<Moment> moments) {
    NumberAxis domain = axis(axisName);
    domain.setAutoRangeIncludesZero(false);
    domain.setLowerMargin(0);
    domain.setUpperMargin(0);
    // The library looks at the labels of both ends only: "3.9" does not fit beside "4".
    domain.setTickLabelInsets(new RectangleInsets(2, 14, 2, 14));
    CombinedDomainXYPlot all = new CombinedDomainXYPlot(domain);
    all.setGap(8);
    all.setBackgroundPaint(Color.WHITE);
    all.setOutlineVisible(false);
    all.setInsets(new RectangleInsets(2, 2, 2, 8));
    for (Strip strip : strips) {
      all.add(plot(strip, moments, strip == strips.get(0)));
    }
    JFreeChart chart = new JFreeChart(null, TEXT, all, false);
    chart.setBackgroundPaint(Color.WHITE);
    chart.setBorderVisible(false);
    chart.setPadding(new RectangleInsets(0, 0, 0, 0));
    return chart;
  }

  /** The picture as an SVG element for a page. */
  String svg(List<Strip> strips, List<Moment> moments) {
    int height = strips.size() * STRIP_HEIGHT + AXIS_HEIGHT;
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setNamespaceAware(true);
      Document document =
          factory.newDocumentBuilder().getDOMImplementation().createDocument(SVG, "svg", null);
      SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
      context.setComment(null);
      context.setIDGenerator(new PrefixedNames(id));
      SVGGraphics2D graphics = new SVGGraphics2D(context, false);
      graphics.setSVGCanvasSize(new Dimension(WIDTH, height));
      chart(strips, moments).draw(graphics, new Rectangle2D.Double(0, 0, WIDTH, height));
      Element root = graphics.getRoot();
      graphics.dispose();
      root.setAttribute("viewBox", "0 0 " + WIDTH + " " + height);
      root.removeAttribute("width");
      root.removeAttribute("height");
      Transformer writer = TransformerFactory.newInstance().newTransformer();
      writer.setOutputProperty(OutputKeys.OMIT_XML_DECLARATION, "yes");
      StringWriter text = new StringWriter();
      writer.transform(new DOMSource(root), new StreamResult(text));
      return text.toString();
    } catch (ParserConfigurationException | TransformerException broken) {
      throw new IllegalStateException("the JDK's own XML tools refused to write a picture", broken);
    }
  }

  private XYPlot plot(Strip strip, List<Moment> moments, boolean first) {
    DefaultXYDataset data = new DefaultXYDataset();
    data.addSeries("now", new double[][] {strip.x(), strip.y()});
    if (strip.earlierX().length > 0) {
      data.addSeries("earlier", new double[][] {strip.earlierX(), strip.earlierY()});
    }
    XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
    renderer.setDrawSeriesLineAsPath(true);
    renderer.setDefaultCreateEntities(false);
    renderer.setSeriesPaint(0, INK);
    renderer.setSeriesStroke(0, new BasicStroke(1.3f));
    renderer.setSeriesPaint(1, QUIET);
    float[] dashes = {4f, 3f};
    renderer.setSeriesStroke(
        1, new BasicStroke(0.9f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, dashes, 0));
    NumberAxis range = axis(strip.unit());
    range.setAutoRangeIncludesZero(true);
    range.setAutoRangeMinimumSize(1e-3);
    // Room above the trace for the strip's name.
    range.setUpperMargin(0.35);
    XYPlot plot = new XYPlot(data, null, range, renderer);
    plot.setBackgroundPaint(SURFACE);
    plot.setOutlineVisible(false);
    plot.setDomainGridlinesVisible(false);
    plot.setRangeGridlinesVisible(false);
    plot.setRangeZeroBaselineVisible(true);
    plot.setRangeZeroBaselinePaint(EDGE);
    plot.setRangeZeroBaselineStroke(new BasicStroke(0.5f));
    for (Moment moment : moments) {
      ValueMarker marker = new ValueMarker(moment.x(), STATE, new BasicStroke(1f));
      if (first) {
        marker.setLabel(moment.words());
        marker.setLabelFont(TEXT);
        marker.setLabelPaint(STATE);
        // The words of the first moment are left of its line, those of the next one right of it.
        boolean left = moment == moments.get(0) && moments.size() > 1;
        marker.setLabelAnchor(left ? RectangleAnchor.TOP_LEFT : RectangleAnchor.TOP_RIGHT);
        marker.setLabelTextAnchor(left ? TextAnchor.TOP_RIGHT : TextAnchor.TOP_LEFT);
        marker.setLabelBackgroundColor(SURFACE);
      }
      plot.addDomainMarker(marker);
    }
    if (first && level != null) {
      plot.addRangeMarker(limit());
    }
    TextTitle name = new TextTitle(strip.name(), NAME);
    name.setPaint(INK);
    name.setBackgroundPaint(SURFACE);
    name.setFrame(BlockBorder.NONE);
    plot.addAnnotation(new XYTitleAnnotation(0.995, 0.96, name, RectangleAnchor.TOP_RIGHT));
    return plot;
  }

  private ValueMarker limit() {
    float[] dashes = {6f, 3f};
    ValueMarker marker =
        new ValueMarker(
            level.y(),
            STATE,
            new BasicStroke(0.9f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, dashes, 0));
    marker.setLabel(level.words());
    marker.setLabelFont(TEXT);
    marker.setLabelPaint(STATE);
    marker.setLabelAnchor(RectangleAnchor.TOP_LEFT);
    marker.setLabelTextAnchor(TextAnchor.BOTTOM_LEFT);
    marker.setLabelBackgroundColor(SURFACE);
    return marker;
  }

  private static NumberAxis axis(String label) {
    NumberAxis axis = new NumberAxis(label);
    axis.setLabelFont(TEXT);
    axis.setLabelPaint(QUIET);
    axis.setTickLabelFont(TEXT);
    axis.setTickLabelPaint(QUIET);
    axis.setAxisLinePaint(EDGE);
    axis.setTickMarkPaint(EDGE);
    axis.setStandardTickUnits(NumberAxis.createStandardTickUnits(java.util.Locale.ROOT));
    return axis;
  }

  /** Names of clips and the like, unique on the page. */
  private static final class PrefixedNames extends SVGIDGenerator {
    private final String page;

    PrefixedNames(String page) {
      this.page = page;
    }

    @Override
    public String generateID(String prefix) {
      return page + "-" + super.generateID(prefix);
    }
  }
}
