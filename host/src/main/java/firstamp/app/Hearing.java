package firstamp.app;

import firstamp.sound.AlarmSound;

/** What is heard of a power-up, and how to silence it. May be called from any thread. */
public interface Hearing {
  /** There is nothing to be heard: a replay. */
  Hearing NOTHING = new Still(State.NOTHING);

  /** How it stands. */
  enum State {
    /** Nothing ever sounds here. */
    NOTHING,
    /** Alarms are heard. */
    HEARD,
    /** Silent on demand until something new and urgent comes. */
    MUTED,
    /** The person did without sound from the start. */
    NOT_WANTED,
    /** This computer cannot make one. */
    NO_DEVICE
  }

  State state();

  /** Silent, or heard again. */
  void mute(boolean silent);

  /** A live power-up without sound (null) or with it. */
  static Hearing of(AlarmSound sound) {
    return sound == null ? new Still(State.NOT_WANTED) : new Sounding(sound);
  }

  /** Nothing can be changed. */
  record Still(State state) implements Hearing {
    @Override
    public void mute(boolean silent) {
      // There is no sound to silence.
    }
  }

  /** Through the computer's device. */
  record Sounding(AlarmSound sound) implements Hearing {
    @Override
    public State state() {
      return sound.unheard() ? State.NO_DEVICE : sound.muted() ? State.MUTED : State.HEARD;
    }

    @Override
    public void mute(boolean silent) {
      sound.mute(silent);
    }
  }
}
