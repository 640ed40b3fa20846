package firstamp.cli.run;

import firstamp.alarm.OffWords;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.model.JobSheet;
import firstamp.model.TimeSource;
import firstamp.sound.AlarmSound;
import java.util.function.Function;

/** Sound for a run, as the options ask for it. */
final class Sounds {
  private Sounds() {}

  /**
   * Opens it and plays the test beep.
   *
   * @param usual whether there is sound where no option says so
   * @return null = silent
   */
  static AlarmSound of(RunOptions options, JobSheet effective, boolean usual) {
    boolean wanted = options.sound == null ? usual || options.tone || options.speak : options.sound;
    if (!wanted) {
      return null;
    }
    return open(effective, options.tone, options.speak, options.speech());
  }

  /** Sound of a power-up that is begun in the window. */
  static AlarmSound inTheWindow(JobSheet effective) {
    return open(effective, false, false, Speech.ENGLISH);
  }

  /** The same as the options of the command ask for it, which the window was opened with. */
  static Function<JobSheet, AlarmSound> later(RunOptions options) {
    return effective -> of(options, effective, true);
  }

  private static AlarmSound open(JobSheet effective, boolean tone, boolean speak, Speech speech) {
    AlarmSound sound =
        AlarmSound.ofThisComputer(
            new AlarmSound.Wishes(tone, speak, OffWords.after(effective)),
            TimeSource.system(),
            problem -> speech.note(Said.of("main.wrong", problem)));
    sound.testBeep();
    return sound;
  }
}
