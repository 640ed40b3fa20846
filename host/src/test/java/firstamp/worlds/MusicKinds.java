package firstamp.worlds;

import java.nio.file.Path;
import java.util.Set;

/** A class-B stage that plays, and an idle current that climbs. */
final class MusicKinds {
  private MusicKinds() {}

  static World music(Draw draw, Path folder, double creepTimes) throws Exception {
    double volts = draw.oneOf(9.0, 12.0, 18.0, 24.0);
    double idle = draw.decades(0.02, 0.1);
    double loud = draw.between(0.1, 0.5);
    double seconds = creepTimes > 0 ? 200 : 30;
    double farad = draw.decades(220e-6, 2200e-6);
    Trace trace = new Trace(seconds);
    Feed feed = Sources.feed(draw, volts, idle, farad);
    double[] piece = Speech.voice(draw, seconds, 0.5, folder);
    double swell = draw.between(0, 1);
    double period = draw.between(5, 20);
    // A quarter of the settled current plus 5 mA a minute is the limit.
    double perMinute = creepTimes * (0.25 * idle + 0.005);
    feed.loads.add(
        (v, t, step) ->
            idle
                + perMinute * t / 60
                + (creepTimes > 0
                    ? 0
                    : loud
                        * 0.3
                        * Math.abs(piece[(int) Math.min(piece.length - 1, t / Trace.STEP_S)])
                        * (1 - swell + swell * (1 - Math.cos(2 * Math.PI * t / period)) / 2)));
    feed.run(trace);
    SheetWords sheet =
        new SheetWords("Amplifier", volts)
            .set("\"kind\":\"amplifier\"")
            .supply("fuseA", Sources.fuse(feed, volts, Math.max(0.5, 3 * loud)));
    boolean healthy = creepTimes == 0;
    return new World(
        healthy ? "music healthy" : "music creep",
        healthy,
        creepTimes,
        sheet.json(),
        Sources.look(draw, volts, volts / idle, farad),
        trace,
        healthy ? Set.of() : Set.of("current-creep"),
        Set.of(),
        0,
        200);
  }
}
