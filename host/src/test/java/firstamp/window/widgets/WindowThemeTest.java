package firstamp.window.widgets;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.WindowOptions;
import firstamp.window.Components;
import firstamp.window.FakeSession;
import firstamp.window.NeedsDisplay;
import firstamp.window.Screenshots;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.util.HashSet;
import java.util.Set;
import javax.swing.UIManager;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** None of the libraries' default looks is left. */
@NeedsDisplay
class WindowThemeTest {
  @ParameterizedTest
  @EnumSource(WindowOptions.Theme.class)
  void ourColoursAreTheDefaultsOfTheLookAndFeel(WindowOptions.Theme theme) throws Exception {
    Palette palette = Palette.of(theme);
    Components.onSwing(
        () -> {
          new WindowTheme(theme);
          assertThat(rgb("Panel.background")).isEqualTo(palette.ground());
          assertThat(rgb("Label.foreground")).isEqualTo(palette.ink());
          assertThat(rgb("Button.background")).isEqualTo(palette.control());
          assertThat(rgb("Component.focusColor")).isEqualTo(palette.focus());
          assertThat(rgb("ComboBox.background")).isEqualTo(palette.control());
          assertThat(rgb("CheckBox.foreground")).isEqualTo(palette.ink());
          assertThat(rgb("TextArea.foreground")).isEqualTo(palette.ink());
          return null;
        });
  }

  private static int rgb(String key) {
    return UIManager.getColor(key).getRGB() & 0xFFFFFF;
  }

  @ParameterizedTest
  @EnumSource(WindowOptions.Theme.class)
  void nothingOfTheChartsOwnLookIsLeft(WindowOptions.Theme theme) throws Exception {
    Palette palette = Palette.of(theme);
    Components.onSwing(
        () -> {
          Screenshots.Opened opened =
              Screenshots.Opened.of(FakeSession.Scene.HEALTHY, theme, Screenshots.SIZE);
          opened
              .panel()
              .strips()
              .component()
              .paint(new BufferedImage(900, 400, BufferedImage.TYPE_INT_RGB).createGraphics());
          JFreeChart chart = opened.panel().strips().chart().chart();
          assertThat(chart.getBackgroundPaint()).isEqualTo(new Color(palette.ground()));
          assertThat(chart.getLegend()).isNull();
          assertThat(chart.getTitle()).isNull();
          CombinedDomainXYPlot all = (CombinedDomainXYPlot) chart.getXYPlot();
          assertThat(all.getSubplots()).hasSize(5);
          for (Object each : all.getSubplots()) {
            XYPlot plot = (XYPlot) each;
            assertThat(plot.isDomainGridlinesVisible()).isFalse();
            assertThat(plot.isRangeGridlinesVisible()).isFalse();
            assertThat(plot.isOutlineVisible()).isFalse();
            assertThat(plot.getShadowGenerator()).isNull();
            assertThat(plot.getBackgroundPaint())
                .isEqualTo(new Color(palette.ground()))
                .isNotEqualTo(Plot.DEFAULT_BACKGROUND_PAINT);
            assertThat(plot.getRenderer()).isNotInstanceOf(XYLineAndShapeRenderer.class);
          }
          assertThat(all.getDomainAxis().getTickLabelPaint()).isEqualTo(new Color(palette.ink()));
          opened.frame().dispose();
          return null;
        });
  }

  /**
   * One ink for all traces: a healthy picture holds nothing but greys, the window's green and it.
   */
  @ParameterizedTest
  @EnumSource(WindowOptions.Theme.class)
  void everyTraceIsDrawnInTheOneInk(WindowOptions.Theme theme) throws Exception {
    Palette palette = Palette.of(theme);
    BufferedImage image = Screenshots.strips(FakeSession.Scene.HEALTHY, theme);
    Set<Integer> strong = new HashSet<>();
    int ink = 0;
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        int rgb = image.getRGB(x, y) & 0xFFFFFF;
        ink += rgb == palette.ink() ? 1 : 0;
        float[] hsb = Color.RGBtoHSB(rgb >> 16, rgb >> 8 & 255, rgb & 255, null);
        // Strong hue means a state; a healthy picture has none but the pale window.
        if (hsb[1] * hsb[2] > 0.35) {
          strong.add(rgb);
        }
      }
    }
    assertThat(ink).isGreaterThan(2_000);
    assertThat(strong).isEmpty();
  }
}
