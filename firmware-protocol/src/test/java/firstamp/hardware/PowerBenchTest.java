package firstamp.hardware;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The way of the supply current and what can go wrong on the clips, in ngspice. */
@ToolCondition.Needs("ngspice")
class PowerBenchTest {
  private static final String[] PINS = {
    "adc_i", "adc_j", "adc_v", "adc_r1", "adc_r2", "adc_r3", "adc_h", "adc_m", "aref", "ain0",
    "ain1", "clip", "pres", "rev", "btns", "peds", "iso", "swp", "lkp", "rxd"
  };

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(ints = {0, 1})
  void cuttingTwelveAmperesKeepsEveryPartWithinItsRating(int chassis) throws Exception {
    Map<String, Double> r = new Bench("cut").with("chassis", String.valueOf(chassis)).run(folder);
    assertThat(Math.abs(r.get("amps_before"))).isCloseTo(12, within(0.3));
    assertThat(r.get("across_max")).as("clamp").isLessThan(103);
    assertThat(r.get("q1_max")).as("Q1").isLessThan(150);
    assertThat(r.get("q2_max")).as("Q2").isLessThan(150);
    assertThat(r.get("q3_max")).as("Q3").isLessThan(200);
    for (String gate : new String[] {"g1_max", "g2_max", "g3_max"}) {
      assertThat(r.get(gate)).as(gate).isLessThan(20);
    }
    assertThat(r.get("g1_min")).isGreaterThan(-20);
    // the set's side swings no more than a diode past its ground
    double past = chassis == 0 ? -r.get("set_min") : r.get("set_max");
    assertThat(past).as("volts past ground on the set's side").isBetween(0.2, 2.0);
  }

  @Test
  void currentIsUnderATenthLongBeforeTheMillisecondIsOver() throws Exception {
    // pin low at 400 us of the bench; 830 us of the firmware leave 170 us
    double release = new Bench("cut").run(folder).get("t_off") - 400e-6;
    assertThat(release).isBetween(0.1e-6, 20e-6);
  }

  @ParameterizedTest
  @ValueSource(ints = {12, 24, 60})
  void aHardShortBehindAReservoirIsCutWithinTheRatings(int volts) throws Exception {
    Map<String, Double> r =
        new Bench("hard-short").with("volts", String.valueOf(volts)).run(folder);
    assertThat(r.get("clamp_a")).as("peak, under the pulse rating of Q1 and Q2").isLessThan(200);
    assertThat(r.get("q1_max")).isLessThan(150);
    assertThat(r.get("q3_max")).isLessThan(200);
    assertThat(r.get("across_max")).as("clamp of 5 kW at its current").isLessThan(120);
    // amplifier, filter and comparator; then 15 us of the chip; then the gate
    assertThat(r.get("t_level") - r.get("t_ten")).isBetween(1e-6, 10e-6);
    assertThat(r.get("t_off") - r.get("t_ten")).isBetween(15e-6, 30e-6);
  }

  @Test
  void aFloatingPinLeavesTheSwitchOff() throws Exception {
    Map<String, Double> r = new Bench("safety").with("driven", "0").run(folder);
    assertThat(Math.abs(r.get("amps_start"))).isLessThan(0.002);
    assertThat(r.get("swg_start")).isLessThan(0.1);
  }

  @Test
  void withoutPowerTheSwitchIsOff() throws Exception {
    Map<String, Double> r = new Bench("safety").with("usb", "0").run(folder);
    assertThat(Math.abs(r.get("amps_start"))).isLessThan(0.002);
  }

  @Test
  void aTapOnThePedalDoesNotOpenAndAHeldPedalOpensWithoutTheChip() throws Exception {
    Map<String, Double> r = new Bench("safety").run(folder);
    assertThat(Math.abs(r.get("amps_start"))).isCloseTo(1, within(0.05));
    assertThat(Math.abs(r.get("amps_tap"))).as("0.5 s down").isCloseTo(1, within(0.05));
    assertThat(Math.abs(r.get("amps_end"))).isLessThan(0.002);
    assertThat(r.get("opens_s") - 1).as("seconds held").isBetween(0.6, 2.0);
    assertThat(r.get("swg_end")).as("under the 0.8 V of a logic low").isLessThan(0.8);
    assertThat(r.get("peds_end")).isLessThan(1.5);
    assertThat(r.get("clip_v")).as("chassis clip on").isLessThan(1.5);
    assertThat(r.get("pres_v")).isGreaterThan(3);
    assertThat(r.get("rev_v")).isLessThan(0.5);
  }

  @Test
  void theButtonOpensTheSwitchAgainstTheDrivenPin() throws Exception {
    Map<String, Double> r = new Bench("safety").replace("SB1", "1").run(folder);
    assertThat(Math.abs(r.get("amps_start"))).isLessThan(0.002);
    assertThat(r.get("swg_start")).isLessThan(0.8);
  }

  @Test
  void aReversedSupplyStaysBlockedAndIsSeen() throws Exception {
    Map<String, Double> r = new Bench("reversed").run(folder);
    assertThat(Math.abs(r.get("set_v"))).isLessThan(0.01);
    assertThat(r.get("rev_v")).isGreaterThan(3);
    assertThat(r.get("pres_v")).isLessThan(1.5);
  }

  @Test
  void withTheChassisSwitchOnTheWrongSideNothingReachesTheSet() throws Exception {
    Map<String, Double> wrong = new Bench("wrong-side").with("chassis", "1").run(folder);
    // V stays at nothing, so no look can end with a result that lets the switch close
    assertThat(wrong.get("adc_v")).isLessThan(2 * 4.096 / 1024);
    assertThat(wrong.get("pres_v")).isLessThan(1.5);
    assertThat(wrong.get("set_v")).isLessThan(1);
    assertThat(wrong.get("in_v")).as("the catch path holds the supply down").isLessThan(2);
    Map<String, Double> right = new Bench("wrong-side").run(folder.resolve("right"));
    assertThat(right.get("set_v")).isCloseTo(12 * 210 / 550.0, within(0.2));
    assertThat(right.get("pres_v")).isGreaterThan(3);
  }

  @Test
  void threeVoltsAreEnoughToBeSeenAsSupply() throws Exception {
    Map<String, Double> r = new Bench("reversed").with("volts", "3").run(folder);
    assertThat(r.get("pres_v")).isGreaterThan(3);
    assertThat(r.get("rev_v")).isLessThan(1.5);
  }

  @ParameterizedTest
  @CsvSource({"210", "30", "3", "2000"})
  void theLookFindsTheSupplyAndTheLoad(double ohm) throws Exception {
    Map<String, Double> r = new Bench("look").with("ohm", String.valueOf(ohm)).run(folder);
    double amps = (r.get("adc_j") - 0.0207) / 4.096 * 0.4;
    double volts = (r.get("adc_v") - 0.0204) / 4.096 * 60;
    assertThat(volts + amps * 330).as("supply").isCloseTo(12, within(0.2));
    double seen = volts / amps;
    assertThat(seen).as("ohm").isCloseTo(ohm, within(0.02 * ohm + 3));
  }

  @ParameterizedTest
  @CsvSource({"60,5", "-60,5", "60,0", "-60,0"})
  void sixtyVoltsOnEveryClipLeaveThePinsWithinTheirRatings(int volts, int usb) throws Exception {
    Map<String, Double> r =
        new Bench("overvoltage")
            .with("volts", String.valueOf(volts))
            .with("usb", String.valueOf(usb))
            .run(folder);
    for (String pin : PINS) {
      // data sheet of the chip, absolute maximum: -0.5 V to VCC + 0.5 V (from memory)
      assertThat(r.get("top_" + pin)).as("%s over VCC", pin).isLessThan(0.5);
      assertThat(r.get("low_" + pin)).as("%s under ground", pin).isGreaterThan(-0.5);
    }
    assertThat(r.get("v5_max")).isLessThan(5.5);
    if (usb == 0) {
      assertThat(r.get("v5_max")).as("dead chip stays in brown-out").isLessThan(4.1);
    }
    // amplifiers: the input diodes carry at most 10 mA; 60 uA through 1 Mohm
    assertThat(r.get("r1_ua_max")).isLessThan(10_000);
    assertThat(r.get("r1_ua_min")).isGreaterThan(-10_000);
    assertThat(r.get("u_head_max")).isLessThan(6);
    assertThat(r.get("u_head_min")).isGreaterThan(-1);
    assertThat(r.get("head_ma")).as("through the 47 kohm of the head").isLessThan(1.4);
  }

  @ParameterizedTest
  @ValueSource(ints = {60, -60, 1})
  void aStepOnTheHeadClipHarmsNothingAndPasses(int volts) throws Exception {
    Map<String, Double> r = new Bench("head-step").with("volts", String.valueOf(volts)).run(folder);
    assertThat(r.get("u_max")).isLessThan(6);
    assertThat(r.get("u_min")).isGreaterThan(-1);
    assertThat(Math.abs(r.get("clip_a_max"))).isLessThan(1.4e-3);
    assertThat(r.get("h_end")).as("back at the middle").isCloseTo(2.0487, within(0.01));
  }
}
