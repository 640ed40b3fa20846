package firstamp.hardware;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The selector S1 stuck between its stops, in ngspice. One way feeds the set past the switch
 * through the catch path; V then reads 0, which is under its lowest zero, so nothing arms.
 */
@ToolCondition.Needs("ngspice")
class BetweenStopsTest {
  private static final double COUNT = 4.096 / 1024;

  /**
   * V rests at 10 counts; a zero under 7 is refused on a new box, under 7 of 10 on a calibrated.
   */
  private static final double LOWEST_ZERO_OF_V = 7;

  private static final double LOOK_OHM = 330;

  @TempDir Path folder;

  @Test
  void wayPastTheSwitchReadsNoZeroOfVAndTheSupplyLampIsDark() throws Exception {
    Map<String, Double> r = between("STOP_A", "STOP_B", 0);
    assertThat(r.get("set_v")).as("the set is fed through F2 and D2").isCloseTo(11.3, within(0.3));
    assertThat(r.get("adc_v") / COUNT).isLessThan(LOWEST_ZERO_OF_V);
    assertThat(r.get("across")).as("high: lamp dark").isGreaterThan(4.5);
  }

  /** Not fed past the switch. */
  @Test
  void noOtherWayFeedsTheSet() throws Exception {
    for (String[] poles :
        new String[][] {
          {"STOP_B", "STOP_A"}, {"NO_STOP", "NO_STOP"}, {"STOP_A", "NO_STOP"},
          {"NO_STOP", "STOP_A"}, {"STOP_B", "NO_STOP"}, {"NO_STOP", "STOP_B"}
        }) {
      assertThat(between(poles[0], poles[1], 0).get("set_v"))
          .as(String.join(" ", poles))
          .isCloseTo(0, within(0.1));
    }
  }

  /** The look sees its current and no volts on the set, which is a short. */
  @Test
  void bothPolesBetweenOrCrossedAreRefusedByTheLook() throws Exception {
    for (String[] poles : new String[][] {{"STOP_B", "STOP_A"}, {"NO_STOP", "NO_STOP"}}) {
      Map<String, Double> off = between(poles[0], poles[1], 0);
      Map<String, Double> look = between(poles[0], poles[1], 1);
      double volts = (look.get("adc_v") - off.get("adc_v")) / COUNT;
      double ampere = (look.get("adc_j") - off.get("adc_j")) / 10.24;
      assertThat(volts).as("counts of V in the look").isLessThan(2);
      assertThat(ampere)
          .as("12 V through the look resistor and the set")
          .isCloseTo(12 / (LOOK_OHM + 100), within(0.002));
    }
  }

  private Map<String, Double> between(String first, String second, int look) throws Exception {
    return new Bench("between-stops")
        .replace("S1A", first)
        .replace("S1B", second)
        .with("look", Integer.toString(look))
        .run(folder.resolve(first + second + look));
  }
}
