package firstamp.window.words;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class SignsTest {
  /**
   * Unit signs and the minus: SI brochure, 9th edition, tables 4 and 7, section 5.4 (from memory).
   */
  @Test
  void writesUnitsAndMinusAsTheFiguresOfTheWindow() {
    assertThat(Signs.in("The surge put charge for 3070 uF into the set."))
        .isEqualTo("The surge put charge for 3070 \u00b5F into the set.");
    assertThat(Signs.in("Hum in the head is -90.4 dBV (was -88): -11, -5 dBV"))
        .isEqualTo("Hum in the head is \u221290.4 dBV (was \u221288): \u221211, \u22125 dBV");
    assertThat(Signs.in("22 ohm to the chassis, other way 47 kohm, 12 uA"))
        .isEqualTo("22 \u03a9 to the chassis, other way 47 k\u03a9, 12 \u00b5A");
  }

  @Test
  void leavesTagsDatesAndWordsAlone() {
    String text = "W-3 to P-7 on 2026-11-25, plug-in, ohmmeter, 5 ohms, 3 uses";
    assertThat(Signs.in(text)).isEqualTo(text);
  }
}
