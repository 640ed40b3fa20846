package firstamp.window;

import firstamp.app.Hearing;

/** A sound that nobody hears; remembers whether it was silenced. */
final class FakeHearing implements Hearing {
  private volatile State state = State.HEARD;

  @Override
  public State state() {
    return state;
  }

  @Override
  public void mute(boolean silent) {
    state = silent ? State.MUTED : State.HEARD;
  }
}
