package firstamp.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import firstamp.app.WindowOptions;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.Tone;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Contrast of every pair of colours that meet, as WCAG 2.2 computes it (W3C Recommendation,
 * definitions of "contrast ratio" and "relative luminance"; success criteria 1.4.3: 4.5 for text,
 * and 1.4.11: 3 for what is not text).
 */
class ContrastTest {
  @Test
  void computesTheRatioOfTheRecommendation() {
    // WCAG 2.2: from 1 to 21; black on white is the largest.
    assertThat(ratio(0x000000, 0xFFFFFF)).isCloseTo(21.0, offset(1e-9));
    assertThat(ratio(0x123456, 0x123456)).isCloseTo(1.0, offset(1e-9));
    // The published border cases of grey on white (technique G18): 767676 passes, 777777 does not.
    assertThat(ratio(0x767676, 0xFFFFFF)).isCloseTo(4.54, offset(0.005));
    assertThat(ratio(0x777777, 0xFFFFFF)).isCloseTo(4.48, offset(0.005));
  }

  @ParameterizedTest
  @EnumSource(WindowOptions.Theme.class)
  void textReachesFourAndAHalf(WindowOptions.Theme theme) {
    Palette p = Palette.of(theme);
    for (int ground : new int[] {p.ground(), p.surface(), p.control()}) {
      text(p.ink(), ground);
      text(p.quietInk(), ground);
    }
    for (Tone tone : Tone.values()) {
      text(p.inkOn(tone), p.groundOf(tone));
    }
    text(p.offInk(), p.off());
    text(p.askInk(), p.ask());
  }

  @ParameterizedTest
  @EnumSource(WindowOptions.Theme.class)
  void tracesAndEdgesReachThree(WindowOptions.Theme theme) {
    Palette p = Palette.of(theme);
    for (int behind : new int[] {p.surface(), p.inside(), p.outside()}) {
      shape(p.ink(), behind);
    }
    shape(p.spread(), p.surface());
    shape(p.edge(), p.surface());
    shape(p.edge(), p.control());
    shape(p.edge(), p.ground());
    shape(p.outside(), p.surface());
    shape(p.off(), p.ground());
    shape(p.focus(), p.ground());
    shape(p.focus(), p.surface());
  }

  /**
   * Meanings of hues as IEC 60073 has them: red danger, yellow abnormal, blue mandatory, green as
   * it should be (from memory; the standard's own table was not available).
   */
  @ParameterizedTest
  @EnumSource(WindowOptions.Theme.class)
  void huesMeanWhatTheyMeanOnOtherIndicators(WindowOptions.Theme theme) {
    Palette p = Palette.of(theme);
    assertThat(hue(p.groundOf(Tone.ALARM))).matches(degrees -> degrees < 15 || degrees > 345);
    assertThat(hue(p.groundOf(Tone.CAUTION))).isBetween(30.0, 60.0);
    assertThat(hue(p.groundOf(Tone.ASK))).isBetween(195.0, 240.0);
    assertThat(hue(p.groundOf(Tone.CALM))).isBetween(100.0, 165.0);
  }

  private static double hue(int rgb) {
    return 360 * java.awt.Color.RGBtoHSB(rgb >> 16 & 255, rgb >> 8 & 255, rgb & 255, null)[0];
  }

  private static void text(int ink, int ground) {
    assertThat(ratio(ink, ground)).as("text %06x on %06x", ink, ground).isGreaterThanOrEqualTo(4.5);
  }

  private static void shape(int ink, int ground) {
    assertThat(ratio(ink, ground)).as("%06x on %06x", ink, ground).isGreaterThanOrEqualTo(3.0);
  }

  static double ratio(int one, int other) {
    double a = luminance(one);
    double b = luminance(other);
    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  }

  private static double luminance(int rgb) {
    return 0.2126 * linear(rgb >> 16 & 255)
        + 0.7152 * linear(rgb >> 8 & 255)
        + 0.0722 * linear(rgb & 255);
  }

  private static double linear(int eightBits) {
    double value = eightBits / 255.0;
    return value <= 0.04045 ? value / 12.92 : Math.pow((value + 0.055) / 1.055, 2.4);
  }
}
