package firstamp.emulate;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.emulate.box.Box;
import firstamp.emulate.box.BoxKind;
import firstamp.emulate.circuit.CircuitBench;
import firstamp.emulate.circuit.SetValues;
import firstamp.emulate.line.Pace;
import firstamp.model.JobSheet;
import firstamp.model.ProbeHello;
import firstamp.model.SwitchState;
import firstamp.model.samples.Calibration;
import firstamp.pipeline.PlannedSettings;
import firstamp.pipeline.ProbeSettings;
import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.message.ProbeMessage;
import firstamp.sheet.Defaults;
import firstamp.sheet.SheetForm;
import firstamp.sheet.SheetQuestion;
import firstamp.sheet.SheetWarnings;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Healthy sets of all kinds, drawn and solved as circuits, switched on with the limits that follow
 * from what their owner happens to know: none is switched off within two seconds, unless the sheet
 * warned of it beforehand.
 *
 * <p>The sets: receivers 6 to 12 V, 5 to 30 mA, 47 to 1000 uF; recorders 6 to 12 V, 10 to 60 mA,
 * 220 to 4700 uF, their motor's lead off; amplifiers 18 to 40 V, 30 to 300 mA, 1000 to 4700 uF as
 * far as half C V squared stays under 2 J; computers 5 to 12 V, 0.3 to 0.8 A and at least 12 ohm
 * (less is a short to the look), 1000 to 10000 uF. Common practice, no source. Nothing but the
 * limiter holds their surge. Rails of such sets settle in 20 to 300 ms: time constants up to 35 ms
 * behind the filter and 60 ms behind the dropper. A bench supply whose limit is not told charges
 * them within 120 ms. Fuse: the smallest of the row above twice the current whose melting I2t is
 * five times the surge, as fuse selection guides ask (a pulse of at most a fifth for 100 000
 * pulses, from memory; melting I2t of time-lag fuses as in {@code FuseFiguresTest}, under 1 A as at
 * 1 A).
 */
class HealthyClosingTest {
  private static final double[] FUSES = {
    0.032, 0.05, 0.063, 0.08, 0.1, 0.125, 0.16, 0.2, 0.25, 0.315, 0.4, 0.5, 0.63, 0.8, 1, 1.25, 1.6,
    2, 2.5, 3.15, 4, 5
  };

  /** A drawn set and what is answered about it. */
  private static final class Drawn {
    final Random random;
    final SetValues set = new SetValues();
    final String kind;
    final double volts;
    final double idleA;
    final double farad;
    final String feed;
    boolean told;

    Drawn(long seed) {
      random = new Random(seed);
      int which = random.nextInt(4);
      kind = new String[] {"receiver", "recorder", "amplifier", "computer"}[which];
      volts =
          switch (which) {
            case 0, 1 -> 6 + 1.5 * random.nextInt(5);
            case 2 -> 18 + 2 * random.nextInt(12);
            default -> 5 + random.nextInt(8);
          };
      idleA =
          Math.min(
              even(
                  new double[] {0.005, 0.010, 0.030, 0.3}[which],
                  new double[] {0.03, 0.06, 0.3, 0.8}[which]),
              volts / 12);
      double most = new double[] {1000e-6, 4700e-6, 4700e-6, 10_000e-6}[which];
      double least = new double[] {47e-6, 220e-6, 1000e-6, 1000e-6}[which];
      farad = Math.min(even(least, most), 2 * 2 / (volts * volts));
      feed =
          which < 2 && random.nextBoolean()
              ? "battery"
              : which == 3 && random.nextBoolean() ? "adaptor" : "bench";
      circuit();
    }

    /** Evenly over the logarithm. */
    double even(double low, double high) {
      return low * Math.pow(high / low, random.nextDouble());
    }

    private void circuit() {
      set.emfV = volts * (0.97 + 0.08 * random.nextDouble());
      boolean battery = feed.equals("battery");
      set.supplyOhm = battery ? even(0.5, 2) : feed.equals("adaptor") ? 0.5 : even(0.05, 0.3);
      set.supplyFarad = battery ? 1e-9 : even(100e-6, 1000e-6);
      set.supplyLimitA = 20;
      if (feed.equals("bench")) {
        double quick = idleA + farad * volts / 0.120;
        told = random.nextBoolean();
        set.supplyLimitA = told ? even(1.5 * idleA, 5) : Math.max(quick, even(0.1, 5));
      }
      double railA = (0.2 + 0.6 * random.nextDouble()) * idleA;
      double railOhm = 0.25 * 0.65 / 0.9 * volts / railA;
      double rail = Math.min((0.1 + 0.7 * random.nextDouble()) * farad, 0.060 / railOhm);
      set.railFarad = rail;
      set.filterFarad = farad - rail;
      // From next to nothing to a filter resistor that drops a tenth.
      double slowest = Math.min(0.1 * volts / idleA, 0.035 / set.filterFarad);
      set.filterOhm = even(0.05, Math.max(0.1, slowest));
      set.filterEsrOhm = even(0.02, 0.3);
      set.idleOhm = volts / (idleA - railA);
      set.dropperOhm = 0.25 * volts / railA;
      set.railLoadOhm = 0.65 * volts / railA;
      set.stagesSiemens = 0;
      set.motor = false;
      set.toneFromS = Double.POSITIVE_INFINITY;
    }

    /** Answers: the first questions, and of the rest what the owner knows. */
    JobSheet sheet() throws Exception {
      SheetForm form =
          SheetForm.empty()
              .answered(SheetQuestion.WHAT, "drawn set")
              .answered(SheetQuestion.VOLTS, number(volts))
              .answered(SheetQuestion.CHASSIS, "negative")
              .answered(SheetQuestion.FEED, feed)
              .answered(SheetQuestion.KIND, kind)
              .answered(SheetQuestion.MOTOR, "no")
              .answered(SheetQuestion.FUSE, random.nextInt(3) > 0 ? number(fuse()) : "?")
              .answered(
                  SheetQuestion.CAPACITANCE, known(farad * 1e6 * (0.9 + 0.2 * random.nextDouble())))
              .answered(SheetQuestion.IDLE, known(idleA * (0.95 + 0.1 * random.nextDouble())))
              .answered(
                  SheetQuestion.LABEL, known(volts * idleA * (1.5 + 2 * random.nextDouble())));
      if (told) {
        form = form.answered(SheetQuestion.SUPPLY_LIMIT, number(set.supplyLimitA));
      }
      return form.sheet();
    }

    private String known(double value) {
      return random.nextBoolean() ? number(value) : "?";
    }

    private double fuse() {
      for (double rating : FUSES) {
        double melting =
            rating * rating * (rating <= 1 ? 1.1 : rating <= 2 ? 1.1 + 1.2 * (rating - 1) : 2.3);
        if (rating >= 2 * idleA && 0.2 * melting >= surgeA2s()) {
          return rating;
        }
      }
      throw new AssertionError("no fuse for " + idleA);
    }

    /** Through a resistance alone V squared C / 2R; a supply that limits makes it less. */
    private double surgeA2s() {
      double ohm = set.supplyOhm + set.switchOhm + set.filterOhm;
      return set.emfV * set.emfV * set.filterFarad / (2 * ohm);
    }

    private static String number(double value) {
      return String.format(Locale.ROOT, "%.4g", value);
    }
  }

  private static PlannedSettings plan(JobSheet effective) throws Exception {
    ProbeHello hello =
        new ProbeHello(
            1, 0, 1, 7, 1, SwitchState.OFF, 3, 0, 0, null, Calibration.nominal(), 10, 330, "made");
    return new ProbeSettings(effective).plan(hello, Set.of(1, 2, 3));
  }

  /** The trip of one drawn set, null = it stayed on. */
  private static ProbeMessage.Trip trip(Drawn drawn, JobSheet stated, long seed) throws Exception {
    EmulatedProbe probe =
        new EmulatedProbe(
            new CircuitBench(drawn.set, (set, seconds) -> {}, seed),
            "drawn set " + seed,
            ProbeOptions.of(seed, Pace.MAX),
            Box.of(BoxKind.SOLDERED, seed));
    TestHost host = new TestHost(probe);
    PlannedSettings plan = plan(Defaults.fill(stated));
    host.switchOn(plan.limits(), plan.look());
    host.runFor(3 + 2);
    assertThat(host.all(ProbeMessage.SwitchChanged.class))
        .as("seed " + seed + " closes")
        .anyMatch(change -> change.state() == ProbeState.ON);
    return host.last(ProbeMessage.Trip.class).orElse(null);
  }

  private static void noneIsSwitchedOff(int sets) throws Exception {
    int warned = 0;
    for (long seed = 1; seed <= sets; seed++) {
      Drawn drawn = new Drawn(seed);
      JobSheet stated = drawn.sheet();
      ProbeMessage.Trip trip = trip(drawn, stated, seed);
      boolean toldBefore =
          SheetWarnings.of(stated).stream()
              .anyMatch(text -> text.english().contains("may be switched off"));
      warned += trip != null && toldBefore ? 1 : 0;
      if (!toldBefore) {
        assertThat(trip)
            .as(
                "seed %d, %s, %.3g V, %.3g A, %.3g F, R %.3g, limit %.3g: %s",
                seed,
                drawn.kind,
                drawn.volts,
                drawn.idleA,
                drawn.farad,
                drawn.set.filterOhm,
                drawn.set.supplyLimitA,
                Defaults.fill(stated).limits())
            .isNull();
      }
    }
    System.out.println(
        "healthy closings: "
            + sets
            + " sets, switched off without a warning 0, with one "
            + warned);
    assertThat(warned).isLessThanOrEqualTo(sets / 10);
  }

  @Test
  void thirtySetsStayOn() throws Exception {
    noneIsSwitchedOff(30);
  }

  @Tag("full")
  @Test
  void fiveHundredSetsStayOn() throws Exception {
    noneIsSwitchedOff(500);
  }
}
