package firstamp.window.pages;

import firstamp.app.Hearing;
import firstamp.bench.Snapshot;
import firstamp.window.widgets.Tone;
import java.awt.Toolkit;

/** Beeps and brings the window to the front: at an alarm, and while nobody seems to be there. */
final class WatchBeeps {
  /** Nobody seems to be there: it beeps so often until it switches off. */
  private static final int BEEP_EVERY_S = 5;

  private final Runnable toFront;
  private final Hearing hearing;
  private Tone lastTone = Tone.PLAIN;
  private Integer lastLeft;

  WatchBeeps(Runnable toFront, Hearing hearing) {
    this.toFront = toFront;
    this.hearing = hearing;
  }

  void follow(Snapshot now, Tone tone) {
    if (tone == Tone.ALARM && lastTone != Tone.ALARM && now.kind() != Snapshot.Kind.REPLAY) {
      if (hearing.state() != Hearing.State.NOT_WANTED) {
        Toolkit.getDefaultToolkit().beep();
      }
      toFront.run();
    }
    lastTone = tone;
    Integer left = now.phase() == Snapshot.Phase.ON ? now.beside().untouchedOffInS() : null;
    if (left != null && !left.equals(lastLeft) && left % BEEP_EVERY_S == 0) {
      Toolkit.getDefaultToolkit().beep();
      toFront.run();
    }
    lastLeft = left;
  }
}
