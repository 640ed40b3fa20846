package firstamp.emulate.probe;

import firstamp.protocol.values.RailWindow;
import firstamp.protocol.values.TripLimits;

/** Finds the limit that would get wider, because none may while the set is on. */
final class WiderLimit {
  private WiderLimit() {}

  /** Number of the first field that is wider in {@code next} than in {@code now}, 0 = none. */
  static int field(TripLimits now, TripLimits next) {
    boolean[] wider = {
      next.inrushMillis() > now.inrushMillis(),
      wider(now.inrushICounts(), next.inrushICounts()),
      wider(now.runningICounts(), next.runningICounts()),
      wider(now.runningJCounts(), next.runningJCounts()),
      wider(now.peakICounts(), next.peakICounts()),
      wider(now.meanISixteenths(), next.meanISixteenths()),
      wider(now.meanJSixteenths(), next.meanJSixteenths()),
      next.confirmI() > now.confirmI(),
      next.confirmJ() > now.confirmJ(),
      next.confirmRail() > now.confirmRail(),
      next.confirmV() > now.confirmV(),
      wider(now.i2tBudgetCounts2(), next.i2tBudgetCounts2()),
      next.i2tRunningICounts() > now.i2tRunningICounts(),
      railLower(now, next),
      railHigher(now, next),
      wider(now.overVCounts(), next.overVCounts()),
      next.silenceMillis() > now.silenceMillis(),
      wider(now.lookOverJCounts(), next.lookOverJCounts()),
      // No start at all is the narrowest.
      next.startICounts() > now.startICounts(),
      next.startMillis() > now.startMillis(),
    };
    for (int i = 0; i < wider.length; i++) {
      if (wider[i]) {
        return i + 1;
      }
    }
    return 0;
  }

  /** 0 is not watched, the widest there is. */
  private static boolean wider(long now, long next) {
    return now != 0 && (next == 0 || next > now);
  }

  private static boolean railLower(TripLimits now, TripLimits next) {
    for (int i = 0; i < now.rails().size(); i++) {
      RailWindow window = now.rails().get(i);
      if (next.rails().get(i).lowCounts() < window.lowCounts()) {
        return true;
      }
    }
    return false;
  }

  private static boolean railHigher(TripLimits now, TripLimits next) {
    for (int i = 0; i < now.rails().size(); i++) {
      RailWindow window = now.rails().get(i);
      if (next.rails().get(i).highCounts() > window.highCounts()) {
        return true;
      }
    }
    return false;
  }
}
