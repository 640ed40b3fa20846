package firstamp.bench;

import firstamp.model.OffCause;
import firstamp.run.LiveRun;

/**
 * Switches a set off that was left on by accident. Session thread; the rest may be asked anywhere.
 */
final class UntouchedOff {
  private final IdleWatch idle;
  private volatile Integer offInS;

  UntouchedOff(IdleWatch idle) {
    this.idle = idle;
  }

  /** Seconds until it switches off, 0 = it has; null = somebody is there. */
  Integer offInS() {
    return offInS;
  }

  /**
   * Looks at the time.
   *
   * @param counts whether it is on with nobody bound to be there: no soak, no time asked for
   */
  void follow(LiveRun run, boolean counts) {
    if (!counts) {
      idle.touched();
      offInS = offInS != null && offInS == 0 ? offInS : null;
    } else if (offInS == null || offInS != 0) {
      offInS = idle.offInS();
      if (idle.over()) {
        run.off(OffCause.TIME);
      }
    }
  }
}
