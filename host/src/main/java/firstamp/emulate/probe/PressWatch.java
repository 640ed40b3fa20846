package firstamp.emulate.probe;

import firstamp.protocol.codes.PressKind;

/** Button or pedal, looked at every 2 ms: settled over two looks, told apart in down, tap, held. */
final class PressWatch {
  private static final long HELD_MICROS = 600_000;

  private boolean last;
  private boolean down;
  private boolean held;
  private long sinceMicros;

  /** Whether it is down, settled. */
  boolean isDown() {
    return down;
  }

  /** What this look at the input means; null = nothing new. */
  PressKind look(boolean isDown, long nowMicros) {
    boolean settled = isDown == last;
    last = isDown;
    if (!settled) {
      return null;
    }
    if (isDown && !down) {
      down = true;
      held = false;
      sinceMicros = nowMicros;
      return PressKind.DOWN;
    }
    if (isDown && !held && nowMicros - sinceMicros >= HELD_MICROS) {
      held = true;
      return PressKind.HELD;
    }
    if (!isDown && down) {
      down = false;
      return held ? null : PressKind.TAP;
    }
    return null;
  }
}
