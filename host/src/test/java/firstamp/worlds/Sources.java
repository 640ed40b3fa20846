package firstamp.worlds;

import java.util.Locale;

/** What the kinds of sets share: volts, source and look. */
final class Sources {
  private Sources() {}

  static String look(Draw draw, double volts, double ohm, double farad) {
    return String.format(
        Locale.ROOT,
        "{\"look\":{\"supplyV\":%.4g,\"loadOhm\":%.4g,\"loadUf\":%.4g}}",
        volts,
        ohm,
        farad * 1e6);
  }

  /** Volts of the source, what it can give, and a reservoir of which the look left some volts. */
  static Feed feed(Draw draw, double volts, double amperes, double farad) {
    Feed feed = new Feed(seconds -> volts);
    feed.sourceOhm = draw.decades(0.05, 0.4);
    feed.reservoirF = farad;
    double ohm = volts / amperes;
    feed.startV =
        volts * ohm / (330 + ohm) * (1 - Math.exp(-3 / (farad * 330 * ohm / (330 + ohm))));
    return feed;
  }

  static double nominal(Draw draw) {
    return draw.oneOf(6.0, 7.5, 9.0, 12.0, 15.0, 18.0);
  }

  /**
   * A time-lag fuse that bears the surge into the set's empty reservoir each time and carries the
   * set. It melts from 1.1 times its rating squared on (5 x 20 mm, IEC 60127-2 sheet 3 and data
   * sheets, from memory); 0.3 of that is borne ten thousand times (data sheets, from memory).
   */
  static double fuse(Feed feed, double volts, double carriesA) {
    double peak = Math.min(Feed.LIMITER_A, volts / feed.sourceOhm);
    double heat = peak * feed.reservoirF * volts / (peak < Feed.LIMITER_A ? 2 : 1);
    return Math.max(carriesA, Math.sqrt(heat / (0.3 * 1.1)));
  }
}
