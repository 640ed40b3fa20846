package firstamp.worlds;

import java.util.Locale;
import java.util.Set;

/** Stages behind resistors on one supply, and what happens to a wire of theirs. */
final class StageKinds {
  private StageKinds() {}

  /** Where a rail comes up slower than is usual its owner has written so. */
  private static String settles(double seconds) {
    return 6 * seconds > 0.5
        ? String.format(Locale.ROOT, ",\"settleMs\":%.0f", 6000 * seconds)
        : "";
  }

  /** Stages behind resistors on one supply. */
  static World plain(Draw draw, String fault) {
    double seconds = 8;
    double volts = Sources.nominal(draw);
    double amperes = draw.decades(0.02, 0.6);
    Trace trace = new Trace(seconds);
    double farad = draw.decades(47e-6, 2200e-6);
    Feed feed = Sources.feed(draw, volts, amperes, farad);
    double railA = amperes * draw.between(0.1, 0.4);
    double railOhm = volts * draw.between(0.04, 0.2) / railA;
    double railF = draw.decades(10e-6, 470e-6);
    double at = draw.between(2, 4);
    Feed.Rail rail = new Feed.Rail("rail1_V", railOhm, railF, Feed.steady(railA));
    feed.rails.add(rail);
    double rest = amperes - railA;
    Feed.Load[] main = {draw.chance(0.5) ? Feed.steady(rest) : Feed.ohms(volts / rest)};
    feed.loads.add((v, t, step) -> main[0].amperes(v, t, step));
    double railV = volts - railA * railOhm;
    SheetWords sheet =
        new SheetWords("Set with stages", volts)
            .supply("fuseA", Sources.fuse(feed, volts, amperes * draw.between(2, 4)))
            .supply("idleA", amperes)
            .rail(1, railV, settles(railOhm * railF));
    Set<String> must = Set.of();
    Set<String> may = Set.of();
    double beyond = 0;
    double within = 1;
    switch (fault) {
      case "short" -> {
        double ohm = draw.decades(0.05, 2);
        beyond = 2.5 / ohm;

        feed.shunt = t -> t < at ? 0 : 1 / ohm;
        must = Set.of("short", "over-current");
        may = Set.of("rail-window", "rail-not-following", "rail-unsteady");
        within = 0.15;
      }
      case "runaway" -> {
        double tau = draw.between(1.5, 3);
        double step0 = amperes * 0.05;
        feed.loads.add(
            (v, t, step) ->
                t < at ? 0 : Math.min(amperes * 6, step0 * (Math.exp((t - at) / tau) - 1)));
        beyond = 3;
        seconds = 12;
        trace = new Trace(seconds);
        must = Set.of("current-creep", "over-current");
        may = Set.of("rail-window", "rail-unsteady", "rail-not-following", "short");
        within = 7.9;
      }
      case "loose-wire" -> {
        double gap = draw.between(0.02, 0.3);
        double period = draw.between(0.3, 0.9);
        feed.hand = t -> rail.ohm = t > at && (t - at) % period < gap ? 1e7 : railOhm;
        beyond = 2;
        must = Set.of("rail-window", "rail-unsteady", "rail-not-following", "over-current");
        within = 3;
      }
      case "pulled-down" -> {
        double drop = draw.between(0.25, 0.7) * railV;
        double ohm = (railV - drop) / (drop / railOhm);
        rail.load = (v, t, step) -> Feed.steady(railA).amperes(v, t, step) + (t < at ? 0 : v / ohm);
        beyond = drop / (0.1 * railV);
        must = Set.of("rail-window", "rail-not-following", "over-current");
        may = Set.of("rail-unsteady", "current-creep");
        within = 1 + 3 * railOhm * railF;
      }
      default -> {}
    }
    feed.run(trace);
    return new World(
        "plain " + fault,
        fault.equals("healthy"),
        beyond,
        sheet.json(),
        Sources.look(draw, volts, volts / amperes, farad),
        trace,
        must,
        may,
        at,
        within);
  }
}
