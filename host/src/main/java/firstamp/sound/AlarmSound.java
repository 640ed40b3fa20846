package firstamp.sound;

import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.Priority;
import firstamp.model.TimeSource;
import java.util.Objects;
import java.util.function.Consumer;

/**
 * The sound of one bench: alarms, the current as a tone, and words.
 *
 * <p>Its thread {@code sound} opens the device at the first sound and waits for it; all methods may
 * be called from any thread and return at once. Without a device the reason is reported once and
 * everything else continues.
 */
public final class AlarmSound implements AutoCloseable {
  private static final int FRAME_SAMPLES = Tune.RATE_HERTZ / 50;
  private static final long JOIN_MILLIS = 2_000;

  private final Object lock = new Object();
  private final AudioOut out;
  private final Voice voice;
  private final Wishes wishes;
  private final CurrentTone tone;
  private final SoundDesk desk;
  private final TimeSource time;
  private final Consumer<String> problem;
  private final Thread thread;
  private boolean closing;
  private boolean broken;

  /**
   * What is wanted.
   *
   * @param tone the current as a tone
   * @param speak alarms in words, where the system can
   * @param afterOff what stays live once the switch is open, whole sentences; empty = nothing
   */
  public record Wishes(boolean tone, boolean speak, String afterOff) {}

  AlarmSound(AudioOut out, Voice voice, Wishes wishes, TimeSource time, Consumer<String> problem) {
    this.out = Objects.requireNonNull(out, "out");
    this.voice = voice;
    this.wishes = wishes;
    this.tone = wishes.tone() ? new CurrentTone() : null;
    this.desk = new SoundDesk(!wishes.afterOff().isEmpty());
    this.time = Objects.requireNonNull(time, "time");
    this.problem = Objects.requireNonNull(problem, "problem");
    this.thread = new Thread(this::work, "sound");
    this.thread.setDaemon(true);
  }

  /**
   * On the devices of this computer.
   *
   * @param problem reported once, in words: what will not be heard
   */
  public static AlarmSound ofThisComputer(
      Wishes wishes, TimeSource time, Consumer<String> problem) {
    Voice voice = wishes.speak() ? Voice.ofThisSystem() : null;
    AlarmSound sound = new AlarmSound(new SystemAudio(), voice, wishes, time, problem);
    if (voice != null && !voice.exists()) {
      problem.accept(
          "this computer has no speech program on its search path; alarms are not spoken");
    }
    sound.start();
    return sound;
  }

  void start() {
    thread.start();
  }

  /** The test beep before switching on. */
  public void testBeep() {
    change(() -> desk.play(Tune.TEST));
  }

  /** An alarm was raised or changed its state. */
  public void alarm(Alarm alarm) {
    change(() -> desk.alarm(alarm, time.monotonicNanos()));
    boolean raised = alarm.state() == AlarmState.UNACKNOWLEDGED;
    if (raised && voice != null && alarm.priority() != Priority.LOW && !muted()) {
      voice.say(alarm.text());
    }
  }

  /** The switch was opened by the probe or by a rule. */
  public void switchedOff() {
    change(desk::switchedOff);
  }

  /** The switch was opened as the person wanted; what stays live is spoken nevertheless. */
  public void offAsWanted() {
    change(desk::offAsWanted);
    if (voice != null && !wishes.afterOff().isEmpty() && !muted()) {
      voice.say(wishes.afterOff());
    }
  }

  /** Current of a reading, ms rising. */
  public void current(double ampere, double atMs) {
    if (tone != null) {
      change(() -> tone.current(ampere, atMs));
    }
  }

  /** No current is watched any longer. */
  public void currentOff() {
    if (tone != null) {
      change(tone::off);
    }
  }

  /** A new power-up: earlier unseen alarms are no longer heard. */
  public void forget() {
    change(desk::forget);
  }

  /**
   * Silent, or not. The next alarm of high priority, and the next time something switches off by
   * itself, is heard again.
   */
  public void mute(boolean silent) {
    change(() -> desk.mute(silent));
    if (silent && voice != null) {
      voice.hush();
    }
  }

  /** Whether it is silent on demand. */
  public boolean muted() {
    synchronized (lock) {
      return desk.muted();
    }
  }

  private void change(Runnable what) {
    synchronized (lock) {
      what.run();
      lock.notifyAll();
    }
  }

  private void work() {
    boolean open = false;
    try {
      while (true) {
        short[] pcm = awaitSound();
        if (pcm == null) {
          return;
        }
        if (!open) {
          String why = out.open();
          if (why != null) {
            synchronized (lock) {
              broken = true;
            }
            problem.accept(why + "; alarms are shown, not heard");
            return;
          }
          open = true;
        }
        out.write(pcm);
      }
    } catch (InterruptedException stop) {
      Thread.currentThread().interrupt();
    } finally {
      out.close();
    }
  }

  /** The next stretch to play, waited for; null = the end. */
  private short[] awaitSound() throws InterruptedException {
    synchronized (lock) {
      while (true) {
        long now = time.monotonicNanos();
        // What waits is played to its end; nothing is repeated then.
        if (closing && !desk.waiting()) {
          return null;
        }
        Tune tune = desk.next(now);
        if (tune != null) {
          return tune.pcm();
        }
        if (tone != null && tone.sounding() && !desk.muted()) {
          short[] frame = new short[FRAME_SAMPLES];
          tone.mixInto(frame);
          return frame;
        }
        long pause = desk.pauseNanos(now);
        lock.wait(pause == Long.MAX_VALUE ? 0 : pause / 1_000_000 + 1);
      }
    }
  }

  /** Whether the device could not be opened. */
  public boolean unheard() {
    synchronized (lock) {
      return broken;
    }
  }

  @Override
  public void close() {
    change(() -> closing = true);
    if (voice != null) {
      voice.close();
    }
    if (Thread.currentThread() == thread) {
      return;
    }
    try {
      thread.join(JOIN_MILLIS);
    } catch (InterruptedException stop) {
      Thread.currentThread().interrupt();
    }
  }
}
