package firstamp.protocol.chip;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.codes.StreamKind;
import firstamp.protocol.frame.Frame;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.rules.TripDecision;
import firstamp.protocol.rules.TripRules;
import firstamp.protocol.rules.Zeros;
import firstamp.protocol.values.LookParameters;
import firstamp.protocol.values.SlotPlan;
import firstamp.protocol.values.TripLimits;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The Java copy of the trip rules against the firmware's own binary in the simulated chip, on drawn
 * power-ups with converter noise: the same cause, channel, value and limit, decided in the same
 * conversion, the pin low within one conversion of what the copy says.
 *
 * <p>Twice each: on the conversions of the run that tripped; and, as "what would other limits have
 * done?" asks, on those of a run with no limit at all and without noise, against what the chip did
 * under the limits.
 */
@Tag("chip")
class TripRulesAgainstChipTest {
  private static final LookParameters NO_LOOK = new LookParameters(true, 300, 563, 5, 51, 61, 236);
  private static final TripLimits NO_LIMITS = TripLimits.builder().silenceMillis(10_000).build();
  private static final double CONVERSION_MICROS = 62.5;

  private static final int NOT_RECEIVED = ChipRecord.NOT_RECEIVED;
  private static final int TRIES = 4;

  @TempDir Path folder;

  /** What the chip did, times from closing; and what the copy makes of its conversions. */
  private record Run(
      ProbeMessage.Trip trip,
      Long decided,
      Double pinMicros,
      Zeros zeros,
      int[] counts,
      boolean whole) {}

  @Timeout(value = 120, unit = TimeUnit.SECONDS)
  @Test
  void eightDrawnPowerUps() throws Exception {
    compare(IntStream.range(0, 8));
  }

  @Tag("full")
  @Timeout(value = 1200, unit = TimeUnit.SECONDS)
  @Test
  void fiftyDrawnPowerUps() throws Exception {
    compare(IntStream.range(100, 150));
  }

  private void compare(IntStream seeds) throws Exception {
    System.out.println("| seed | what | cause | chip ms | rules ms | other limits ms |");
    int tripped = 0;
    Map<String, double[]> byCause = new TreeMap<>();
    for (int seed : seeds.toArray()) {
      DrawnPowerUp drawn = new DrawnPowerUp(seed);
      Run noisy = run(drawn, drawn.limits, 0.7);
      exactlyTheSame(drawn, noisy);
      Run quiet = run(drawn, drawn.limits, 0);
      Run open = run(drawn, NO_LIMITS, 0);
      assertThat(open.trip).as("without limits, seed %d", seed).isNull();
      Long whatIf = withinOneConversion(drawn, quiet, open.counts);
      tripped += noisy.trip == null ? 0 : 1;
      count(byCause, noisy);
      System.out.printf(
          Locale.ROOT,
          "| %d | %s | %s | %s | %s | %s |%n",
          seed,
          drawn.kind,
          noisy.trip == null ? "none" : noisy.trip.cause(),
          millis(noisy.pinMicros),
          noisy.decided == null
              ? "-"
              : millis(SlotPlan.microsOf(noisy.decided) + (double) TripRules.PIN_LOW_MICROS),
          whatIf == null
              ? "-"
              : millis(SlotPlan.microsOf(whatIf) + (double) TripRules.PIN_LOW_MICROS));
    }
    assertThat(tripped).as("power-ups that trip").isPositive();
    System.out.println("| cause | power-ups | pin low later than 45 us, at most |");
    byCause.forEach(
        (cause, seen) ->
            System.out.printf(Locale.ROOT, "| %s | %.0f | %.0f us |%n", cause, seen[0], seen[1]));
  }

  /** Power-ups of a cause, and how late the pin was at most. */
  private static void count(Map<String, double[]> byCause, Run chip) {
    String cause = chip.trip == null ? "no trip" : chip.trip.cause().toString();
    double[] seen = byCause.computeIfAbsent(cause, none -> new double[2]);
    seen[0]++;
    if (chip.trip != null) {
      double due = SlotPlan.microsOf(chip.decided) + (double) TripRules.PIN_LOW_MICROS;
      seen[1] = Math.max(seen[1], chip.pinMicros - due);
    }
  }

  private static String millis(Double micros) {
    return micros == null ? "-" : String.format(Locale.ROOT, "%.3f", micros / 1000);
  }

  /** What the copy decides, and the conversion from closing in which it does. */
  private record Copy(TripDecision decision, long decided, long i2tCounts2) {
    /** The closing is at slot 0 of a reading, so conversions may be counted from there. */
    static Copy of(TripLimits limits, Zeros zeros, int[] counts) {
      TripRules rules = new TripRules(limits, zeros, 0);
      for (int n = 0; n < counts.length; n++) {
        TripDecision decision = counts[n] == NOT_RECEIVED ? null : rules.conversion(n, counts[n]);
        if (decision != null) {
          return new Copy(decision, n, rules.i2tCounts2());
        }
      }
      return new Copy(null, -1, rules.i2tCounts2());
    }

    double pinMicros() {
      return SlotPlan.microsOf(decided) + (double) TripRules.PIN_LOW_MICROS;
    }
  }

  private static void exactlyTheSame(DrawnPowerUp drawn, Run chip) {
    Copy copy = Copy.of(drawn.limits, chip.zeros, chip.counts);
    String which = "seed " + drawn.seed + ", " + drawn.kind + ", " + drawn.limits;
    if (chip.trip == null || copy.decision == null) {
      assertThat(copy.decision).as("no trip in the chip, %s", which).isNull();
      assertThat(chip.trip).as("no trip by the copy, %s", which).isNull();
      return;
    }
    assertThat(copy.decision.cause()).as(which).isEqualTo(chip.trip.cause());
    assertThat(copy.decision.channel()).as(which).isEqualTo(chip.trip.channel());
    assertThat(copy.decision.confirmed()).as(which).isEqualTo(chip.trip.confirmed());
    assertThat(copy.decision.value()).as(which).isEqualTo(chip.trip.value());
    assertThat(copy.decision.limit()).as(which).isEqualTo(chip.trip.limit());
    assertThat(copy.i2tCounts2).as(which).isEqualTo(chip.trip.i2tCounts2());
    assertThat(copy.decided).as(which).isEqualTo(chip.decided);
    assertThat(Math.abs(chip.pinMicros - copy.pinMicros()))
        .as(which)
        .isLessThanOrEqualTo(CONVERSION_MICROS);
  }

  /**
   * On the conversions of another run: sampled some cycles sooner or later, so a value on a slope
   * may differ by a count. The pin of seed 141 was once 70 us late (trip-rules.md), so twice a
   * conversion is let.
   */
  private static Long withinOneConversion(DrawnPowerUp drawn, Run chip, int[] counts) {
    Copy copy = Copy.of(drawn.limits, chip.zeros, counts);
    String which = "other limits, seed " + drawn.seed + ", " + drawn.kind + ", " + drawn.limits;
    if (chip.trip == null || copy.decision == null) {
      assertThat(copy.decision).as("no trip in the chip, %s", which).isNull();
      assertThat(chip.trip).as("no trip by the copy, %s", which).isNull();
      return null;
    }
    assertThat(copy.decision.cause()).as(which).isEqualTo(chip.trip.cause());
    assertThat(copy.decision.channel()).as(which).isEqualTo(chip.trip.channel());
    assertThat(Math.abs(chip.pinMicros - copy.pinMicros()))
        .as(which)
        .isLessThanOrEqualTo(2 * CONVERSION_MICROS);
    return copy.decided;
  }

  /**
   * On a busy computer a request may be sent twice, which cuts the stream: such a run is repeated.
   */
  private Run run(DrawnPowerUp drawn, TripLimits limits, double noise) throws Exception {
    for (int tries = 0; tries < TRIES; tries++) {
      Run run = once(drawn, limits, noise);
      if (run.whole) {
        return run;
      }
    }
    throw new AssertionError("no whole stream in " + TRIES + " runs of seed " + drawn.seed);
  }

  private Run once(DrawnPowerUp drawn, TripLimits limits, double noise) throws Exception {
    Path own = Files.createTempDirectory(folder, "run");
    Path frontEnd = Files.writeString(own.resolve("front-end.json"), "{\"decayMs\":5}");
    List<String> options =
        List.of(
            "--flat-out",
            "--front-end",
            frontEnd.toString(),
            "--noise-counts",
            String.valueOf(noise),
            "--seed",
            String.valueOf(drawn.seed));
    try (ChipProbe probe = ChipProbe.start(own, drawn.waveform, options)) {
      probe.hello();
      probe.command(new HostMessage.SetLimits(limits));
      probe.command(new HostMessage.StreamRequest(StreamKind.RAW));
      probe.send(new HostMessage.SwitchOn(NO_LOOK));
      // The two come in either order.
      ProbeMessage.LookResult look = null;
      Frame on = null;
      while (look == null || on == null) {
        Frame frame = probe.awaitFrame(ProbeMessage.class, m -> isLookOrOn(m));
        if (frame.message() instanceof ProbeMessage.LookResult result) {
          look = result;
        } else {
          on = frame;
        }
      }
      Zeros zeros =
          new Zeros(look.zeroISixteenths(), look.zeroJSixteenths(), look.zeroVSixteenths());
      long closed = number(on.tickMicros());
      long wanted = closed + Math.round(DrawnPowerUp.SECONDS * SlotPlan.CONVERSIONS_PER_SECOND);
      ProbeMessage.Trip trip = null;
      while (trip == null && probe.record().counts(wanted) == NOT_RECEIVED) {
        trip = probe.poll(ProbeMessage.Trip.class, m -> true, 20);
      }
      probe.command(new HostMessage.StreamRequest(StreamKind.NONE));
      if (trip != null && number(trip.decidedTickMicros()) >= wanted) {
        trip = null; // After the drawn time the last row is held, and may trip.
      }
      int[] counts = new int[(int) (wanted - closed)];
      for (int n = 0; n < counts.length; n++) {
        counts[n] = probe.record().counts(closed + n);
      }
      long until = trip == null ? counts.length : number(trip.decidedTickMicros()) + 1 - closed;
      boolean whole = IntStream.range(0, (int) until).allMatch(n -> counts[n] != NOT_RECEIVED);
      ChipEvents events = probe.finish();
      if (trip == null) {
        return new Run(null, null, null, zeros, counts, whole);
      }
      double onCycle = events.last("on").orElseThrow();
      double offCycle = events.last("off").orElseThrow();
      return new Run(
          trip,
          number(trip.decidedTickMicros()) - closed,
          (offCycle - onCycle) / ChipEvents.CYCLES_PER_MICROSECOND,
          zeros,
          counts,
          whole);
    }
  }

  private static boolean isLookOrOn(ProbeMessage message) {
    return message instanceof ProbeMessage.LookResult
        || message instanceof ProbeMessage.SwitchChanged changed
            && changed.state() == ProbeState.ON;
  }

  /** Conversion n starts at tick floor(62.5 n). */
  private static long number(long tickMicros) {
    return (2 * tickMicros + 1) / 125;
  }
}
