package firstamp.conformance;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.model.JobSheet;
import firstamp.model.ProbeHello;
import firstamp.model.SwitchState;
import firstamp.model.samples.Calibration;
import firstamp.pipeline.ProbeSettings;
import firstamp.protocol.codes.ProbeState;
import firstamp.protocol.codes.StreamKind;
import firstamp.protocol.codes.TripCause;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.TripLimits;
import firstamp.sheet.Defaults;
import firstamp.sheet.SheetReader;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Set;

/**
 * What a fault gets when the host says nothing more after closing: the probe's own limits of the
 * supply current alone, as they follow from a sheet that states none.
 *
 * <p>The set draws a third of its running limit, then the fault: a steady multiple of the running
 * limit at the nominal volts, which is more than any supply would hold. Joules are volts times
 * ampere from the fault to the switch pin. The bounds are worked out in {@link Known}.
 */
final class SilentHost {
  static final double[] FACTORS = {1.2, 2, 4, 8};
  static final double[] AT_MS = {1, 10, 100, 900};

  private static final String FRONT_END =
      "{\"look\":{\"supplyV\":12,\"loadOhm\":200,\"loadUf\":50},\"decayMs\":5}";

  private SilentHost() {}

  /**
   * A set by what is known of it.
   *
   * <p>A fault in the surge time lasts until that is over, and 0.83 ms on the coarse range or 4.1
   * ms on the fine one (6 ms with the J slots 2 ms apart and a limit just passed), or until the I2t
   * budget of the inrush is used up; after the surge time only those few milliseconds. Longest: 1.2
   * times the running limit right after closing. Most joules: the largest V I t of the four
   * multiples.
   */
  enum Known {
    /** 0.8 of the fuse; 3 * 56.4 mC / 1.5 A = 113 ms; budget 0.5 A2s: 3.2 A last 52 ms. */
    FUSE("12 V, fuse 1 A, supply 1.5 A", 12, "\"fuseA\":1,\"limitA\":1.5", 0.8, 113, 2.2),
    /** 1 A; 56.4 mC / (e * 1 A / 3) = 63 ms, budget 2 * 9 * 56.4 mC / 2 = 0.508 A2s. */
    NOTHING("12 V, nothing known", 12, "\"kind\":\"bench\"", 1.0, 63, 2.0),
    /** 1.5 * 118 mA; 37.2 mC / (e * 0.177 A / 3) = 232 ms, so 200 ms. */
    IDLE(
        "12 V, idle 118 mA, 3100 uF",
        12,
        "\"idleA\":0.118,\"capacitanceUf\":3100",
        0.177,
        200,
        3.5),
    /** 3 * 30 mA; 2.0 mC / (e * 0.09 A / 3) = 24 ms, so 60 ms; fine range. */
    RADIO(
        "9 V, battery receiver, 220 uF",
        9,
        "\"kind\":\"battery\",\"capacitanceUf\":220",
        0.09,
        60,
        0.4),
    /** 0.8 of the fuse; 112.8 mC / (e * 1.6 A / 3) = 78 ms; budget 9 * 112.8 mC = 1.015 A2s. */
    AMPLIFIER("24 V, fuse 2 A, 4700 uF", 24, "\"fuseA\":2,\"capacitanceUf\":4700", 1.6, 78, 9);

    final String words;
    final double volts;
    final String supply;
    final double runningA;
    final double surgeMs;
    final double mostJ;

    Known(
        String words, double volts, String supply, double runningA, double surgeMs, double mostJ) {
      this.words = words;
      this.volts = volts;
      this.supply = supply;
      this.runningA = runningA;
      this.surgeMs = surgeMs;
      this.mostJ = mostJ;
    }

    private JobSheet sheet() throws Exception {
      String kind = this == RADIO ? "receiver" : "other";
      String json =
          String.format(
              Locale.ROOT,
              "{\"set\":{\"name\":\"S\",\"kind\":\"%s\"},\"supply\":{\"nominalV\":%s,%s}}",
              kind,
              volts,
              supply);
      return Defaults.fill(SheetReader.parse("s", json).sheet());
    }
  }

  /** How one fault ended: milliseconds and joules from the fault to the switch pin. */
  record Cut(TripCause cause, double ms, double joule) {}

  private static TripLimits limits(Known set) throws Exception {
    ProbeHello hello =
        new ProbeHello(
            1, 0, 1, 7, 1, SwitchState.OFF, 3, 0, 0, null, Calibration.nominal(), 10, 330, "made");
    return new ProbeSettings(set.sheet()).plan(hello, Set.of(1, 2, 3)).limits();
  }

  private static String waveform(Known set, double ampere, double atMs) {
    double before = set.runningA / 3;
    return String.format(
        Locale.ROOT,
        "t_s,supply_V,supply_A\n0,%1$s,%2$s\n%3$s,%1$s,%2$s\n%4$s,%1$s,%5$s\n60,%1$s,%5$s\n",
        set.volts,
        before,
        atMs / 1000,
        atMs / 1000 + 1e-7,
        ampere);
  }

  /** Runs one cell; every one must be cut by a limit of the current, and within its bounds. */
  static Cut cell(Target target, Path folder, Known set, double factor, double atMs)
      throws Exception {
    double ampere = factor * set.runningA;
    String words = set.words + ", " + factor + " x running at " + atMs + " ms";
    try (Target.Started started = target.start(waveform(set, ampere, atMs), FRONT_END, folder)) {
      Host host = new Host(started.port());
      host.open(StreamKind.RAW);
      assertThat(host.ask(new HostMessage.SetLimits(limits(set)))).as(words).isNull();
      assertThat(host.ask(new HostMessage.SwitchOn(Host.look(true)))).as(words).isNull();
      host.until(
          () ->
              host.all(ProbeMessage.SwitchChanged.class).stream()
                  .anyMatch(change -> change.state() == ProbeState.ON),
          10,
          "closing, " + words);
      host.fallSilent();
      host.until(() -> !host.all(ProbeMessage.Trip.class).isEmpty(), 4, "trip, " + words);
      host.awaitState(ProbeState.TRIPPED, 1);
      TripCause cause = host.last(ProbeMessage.Trip.class).orElseThrow().cause();
      double ms = (host.tickOf(ProbeState.TRIPPED) - host.tickOf(ProbeState.ON)) / 1000.0 - atMs;
      Cut cut = new Cut(cause, ms, set.volts * ampere * ms / 1000);
      assertThat(cause)
          .as(words)
          .isIn(TripCause.INRUSH, TripCause.RUNNING, TripCause.I2T, TripCause.HARD_SHORT);
      assertThat(ms).as(words).isBetween(0.0, Math.max(0, set.surgeMs - atMs) + 6);
      assertThat(cut.joule()).as(words).isLessThan(set.mostJ);
      return cut;
    }
  }
}
