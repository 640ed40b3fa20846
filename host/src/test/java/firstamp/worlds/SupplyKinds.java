package firstamp.worlds;

import java.util.Locale;
import java.util.Set;

/** Supplies that are no clean volts: mains, by hand, in steps, limiting. */
final class SupplyKinds {
  private SupplyKinds() {}

  /** The box behind a transformer, rectifier and reservoir; the reservoir is the set's own. */
  static World transformer(Draw draw, String fault) {
    double hz = draw.oneOf(50.0, 60.0);
    double volts = draw.oneOf(9.0, 12.0, 15.0);
    double amperes = draw.decades(0.05, 0.4);
    double reservoir = amperes / (2 * hz * volts * draw.between(0.02, 0.06));
    double share = fault.equals("tired-filter") ? draw.between(0.05, 0.35) : 1;
    double at = fault.equals("half-open") ? draw.between(2, 3) : 0;
    double peak = volts * 1.03 + 0.3;
    Trace trace = new Trace(8);
    double[] supplyV = trace.column("supply_V");
    double[] supplyA = trace.column("supply_A");
    double[] rail1 = trace.column("rail1_V");
    double railOhm = volts * 0.1 / (amperes * 0.3);
    double railF = draw.decades(100e-6, 470e-6);
    double v = 0;
    double rail = 0;
    double winding = draw.between(0.3, 1.5);
    int parts = 8;
    double step = Trace.STEP_S / parts;
    double phase = draw.between(0, 2 * Math.PI);
    for (int row = 0; row < trace.length(); row++) {
      double out = 0;
      for (int part = 0; part < parts; part++) {
        double t = row * Trace.STEP_S + part * step;
        double wave =
            peak * (1 + amperes * winding / volts * 2.5) * Math.sin(2 * Math.PI * hz * t + phase);
        double source = (fault.equals("half-open") && t > at ? Math.max(0, wave) : Math.abs(wave));
        double in = Math.max(0, (source - v) / winding);
        double draws = amperes * 0.7 * Math.tanh(v / 1.5) + Math.max(0, v - rail) / railOhm;
        v += (in - draws) * step / (reservoir * share);
        v = Math.max(0, v);
        rail += ((v - rail) / railOhm - amperes * 0.3 * Math.tanh(rail / 1.5)) * step / railF;
        out += draws / parts;
      }
      supplyV[row] = v;
      supplyA[row] = out;
      rail1[row] = rail;
    }
    double ripplePp = amperes / (2 * hz * reservoir);
    double limit = ripplePp / (2 * Math.sqrt(3)) * 1.5;
    trace.column("rail2_V");
    System.arraycopy(supplyV, 0, trace.column("rail2_V"), 0, trace.length());
    double mean = 0;
    for (int row = 8000; row < 14000; row++) {
      mean += supplyV[row] / 6000;
    }
    double meanRail = volts * 0.9;
    SheetWords sheet =
        new SheetWords("Set on the mains", volts)
            .supply("\"kind\":\"mains-transformer\",\"probeSits\":\"after-reservoir\"")
            .supply("fuseA", Math.max(0.2, amperes * 2.5))
            .supply("minV", volts * 0.8)
            .supply("maxV", volts * 1.25)
            .rail(
                2,
                mean,
                String.format(
                    Locale.ROOT,
                    ",\"tolerancePercent\":15,\"rippleMaxVrms\":%.3g,\"capacitanceUf\":%.4g,\"rectifier\":\"full\"",
                    limit,
                    reservoir * 1e6));
    boolean healthy = fault.equals("healthy");
    double beyond = fault.equals("half-open") ? 2 / 1.5 : 1 / share / 1.5;
    return new World(
        "transformer " + fault,
        healthy,
        healthy ? 0 : beyond,
        sheet.json(),
        Sources.look(draw, volts, volts / amperes, reservoir),
        trace,
        healthy ? Set.of() : Set.of("ripple", "rail-unsteady", "rail-window"),
        Set.of("rail-window", "rail-unsteady"),
        at,
        2.5);
  }

  /** A bench supply turned up in steps, said on the sheet. */
  static World steps(Draw draw) {
    double volts = draw.oneOf(9.0, 12.0, 18.0);
    double ohm = volts / draw.decades(0.03, 0.3);
    double farad = draw.decades(100e-6, 1000e-6);
    Trace trace = new Trace(14);
    double[] shares = {0.4, 0.6, 0.8, 1};
    Feed feed = Sources.feed(draw, volts * 0.4, volts * 0.4 / ohm, farad);
    double dwell = draw.between(2, 3);
    feed.source =
        t -> {
          int now = Math.min(3, (int) (t / dwell));
          double from = shares[Math.max(0, now - 1)];
          double share = Math.min(1, (t - now * dwell) / 0.4);
          return volts * (from + (shares[now] - from) * share);
        };
    feed.loads.add(Feed.ohms(ohm));
    Feed.Rail rail = new Feed.Rail("rail1_V", ohm * 0.5, 100e-6, Feed.ohms(ohm * 3));
    feed.rails.add(rail);
    feed.run(trace);
    SheetWords sheet =
        new SheetWords("Set brought up in steps", volts)
            .supply("\"through\":\"variable-transformer\"")
            .supply("fuseA", Sources.fuse(feed, volts, 3 * volts / ohm))
            .rail(1, volts * 3 / 3.5, "");
    return new World(
        "steps healthy",
        true,
        0,
        sheet.json(),
        Sources.look(draw, volts * 0.4, ohm * 0.8, farad),
        trace,
        Set.of(),
        Set.of(),
        0,
        0);
  }

  /** A supply turned up by hand, from nothing or from where the first look can see. */
  static World turnedUp(Draw draw, boolean fromZero) {
    double volts = draw.oneOf(12.0, 18.0, 24.0);
    double amperes = draw.decades(0.03, 0.3);
    double farad = draw.decades(100e-6, 1000e-6);
    Trace trace = new Trace(14);
    double first = fromZero ? 0.02 * volts : Math.max(2.4, 0.13 * volts);
    Feed feed = Sources.feed(draw, first, amperes, farad);
    feed.startV = 0;
    double took = draw.between(4, 9);
    double waits = draw.between(0.5, 1.5);
    feed.source = t -> Math.min(volts, first + volts * Math.max(0, t - waits) / took);
    boolean steady = draw.chance(0.5);
    double ohm = steady ? first / amperes : volts / amperes;
    feed.loads.add(steady ? Feed.steady(amperes) : Feed.ohms(ohm));
    feed.run(trace);
    SheetWords sheet =
        new SheetWords("Set turned up by hand", volts)
            .supply("\"through\":\"variable-transformer\"")
            .supply("fuseA", Sources.fuse(feed, volts, 3 * amperes));
    return new World(
        fromZero ? "turned-up from-zero healthy" : "turned-up healthy",
        true,
        0,
        sheet.json(),
        Sources.look(draw, first, ohm, farad),
        trace,
        Set.of(),
        Set.of(),
        0,
        0);
  }

  /** A short behind a supply that limits. */
  static World limited(Draw draw) {
    double volts = Sources.nominal(draw);
    double amperes = draw.decades(0.02, 0.2);
    double farad = draw.decades(47e-6, 470e-6);
    Trace trace = new Trace(6);
    Feed feed = Sources.feed(draw, volts, amperes, farad);
    feed.limitA = amperes * draw.between(1.5, 4);
    double at = draw.between(1.5, 3);
    double ohm = draw.decades(0.1, 2);
    feed.loads.add(Feed.steady(amperes));
    feed.shunt = t -> t < at ? 0 : 1 / ohm;
    feed.run(trace);
    SheetWords sheet =
        new SheetWords("Set on a supply that limits", volts)
            .supply("limitA", feed.limitA)
            .supply("fuseA", Math.max(0.2, amperes * 5));
    return new World(
        "limited short",
        false,
        2.5 / ohm,
        sheet.json(),
        Sources.look(draw, volts, volts / amperes, farad),
        trace,
        Set.of("short", "over-current"),
        Set.of("rail-window"),
        at,
        0.4);
  }
}
