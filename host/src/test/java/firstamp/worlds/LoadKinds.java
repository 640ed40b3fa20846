package firstamp.worlds;

import java.util.Locale;
import java.util.Set;

/** Loads that do not draw evenly: motors, lamps, a battery that sags. */
final class LoadKinds {
  private LoadKinds() {}

  static World motor(Draw draw, String fault, boolean governed) {
    double volts = draw.oneOf(6.0, 7.5, 9.0, 12.0);
    double stages = draw.decades(0.015, 0.08);
    double running = draw.between(0.05, 0.16);
    double ohm = volts / (running * draw.between(4, 8));
    double at = draw.between(1.5, 3);
    double farad = draw.decades(100e-6, 1000e-6);
    Trace trace = new Trace(9);
    Feed feed = Sources.feed(draw, volts, stages, farad);
    Motor motor =
        new Motor(
            ohm,
            volts,
            running,
            draw.between(0.05, 0.25),
            at,
            governed ? draw.between(0.5, 0.8) : 2,
            draw.between(30, 60));
    motor.blocked = fault.equals("stalled");
    if (draw.chance(0.4)) {
      motor.stopS = at + 4;
    }
    feed.loads.add(motor);
    feed.loads.add(Feed.steady(stages));
    feed.run(trace);
    SheetWords sheet =
        new SheetWords("Set with a motor", volts)
            .set("\"kind\":\"recorder\",\"motor\":true")
            .set(String.format(Locale.ROOT, "\"motorOhm\":%.3g", ohm))
            .supply("fuseA", Sources.fuse(feed, volts, Math.max(0.5, stages + running * 3)));
    boolean healthy = !motor.blocked;
    return new World(
        (governed ? "governor " : "motor ") + fault,
        healthy,
        healthy ? 0 : 4,
        sheet.json(),
        Sources.look(draw, volts, volts / stages, farad),
        trace,
        healthy ? Set.of() : Set.of("over-current", "short"),
        Set.of(),
        at,
        2);
  }

  static World lamps(Draw draw) {
    double volts = draw.oneOf(6.0, 9.0, 12.0, 24.0);
    double stages = draw.decades(0.02, 0.2);
    // Under about 8 ohm cold the first look cannot tell it from a short, and says so.
    double lampA = Math.min(draw.between(0.05, 0.3), volts / 12 / 9);
    double farad = draw.decades(47e-6, 1000e-6);
    Trace trace = new Trace(8);
    Feed feed = Sources.feed(draw, volts, stages, farad);
    Lamp lamp = new Lamp(volts, lampA, draw.between(0.03, 0.15));
    feed.loads.add(lamp);
    feed.loads.add(Feed.steady(stages));
    feed.run(trace);
    SheetWords sheet =
        new SheetWords("Set with dial lamps", volts)
            .supply("fuseA", Sources.fuse(feed, volts, 2 * (stages + lampA)));
    double ohm = volts / (stages + 12 * lampA);
    return new World(
        "lamps healthy",
        true,
        0,
        sheet.json(),
        Sources.look(draw, volts, ohm, farad),
        trace,
        Set.of(),
        Set.of(),
        0,
        0);
  }

  static World battery(Draw draw) {
    double volts = draw.oneOf(6.0, 9.0, 12.0);
    double stages = draw.decades(0.01, 0.06);
    double burst = draw.between(0.05, 0.15);
    double farad = draw.decades(47e-6, 470e-6);
    double at = draw.between(2, 4);
    double length = draw.between(0.5, 2);
    Trace trace = new Trace(9);
    double sag = draw.between(0.2, 0.6);
    double[] state = {0};
    Feed feed = Sources.feed(draw, volts, stages, farad);
    feed.sourceOhm = draw.between(0.5, 2);
    feed.source = t -> volts - state[0];
    feed.loads.add(Feed.steady(stages));
    feed.loads.add(
        (v, t, step) -> {
          double a = t > at && t < at + length ? burst : 0;
          state[0] += ((stages + a) * sag * 4 - state[0]) * step / 2;
          return a;
        });
    feed.run(trace);
    SheetWords sheet =
        new SheetWords("Set on a battery", volts)
            .supply("\"kind\":\"battery\"")
            .supply("fuseA", Sources.fuse(feed, volts, 0.5));
    return new World(
        "battery healthy",
        true,
        0,
        sheet.json(),
        Sources.look(draw, volts, volts / stages, farad),
        trace,
        Set.of(),
        Set.of(),
        0,
        0);
  }
}
