package firstamp.cli.run;

import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.model.ClipMove;
import firstamp.model.Happening;
import firstamp.model.OffCause;
import firstamp.model.text.Worded;
import firstamp.run.BenchMode;
import firstamp.run.LiveRun;
import firstamp.sound.AlarmSound;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.Charset;
import java.util.Locale;

/** Words from standard input to a run without a window, one a line; an empty line switches off. */
final class RunKeys {
  private static final String KNOWN =
      "off (or Enter alone), seen, mark TEXT, record on, record off, record unknown, clip NAME,"
          + " clip off, changed TEXT, started TEXT, hands in, soak, usual, mode, mute, sound";

  private final LiveRun watch;
  private final AlarmSound sound;
  private final Worded awakeProblem;
  private final Speech speech;

  RunKeys(LiveRun watch, AlarmSound sound, Worded awakeProblem, Speech speech) {
    this.speech = speech;
    this.watch = watch;
    this.sound = sound;
    this.awakeProblem = awakeProblem;
  }

  /** Reads until the input ends; the run continues without it. */
  void start() {
    Thread thread = new Thread(this::work, "keys");
    thread.setDaemon(true);
    thread.start();
  }

  private void work() {
    try {
      BufferedReader in =
          new BufferedReader(new InputStreamReader(System.in, Charset.defaultCharset()));
      for (String line = in.readLine(); line != null; line = in.readLine()) {
        take(line.trim());
      }
    } catch (IOException gone) {
      speech.note(Said.of("run-keys.standard-input-is-gone-ctrl"));
    }
  }

  /** What a line says was done to the set; null = it says something else. */
  static Happening happening(String line) {
    String word = line.toLowerCase(Locale.ROOT);
    for (Happening.RecordState state : Happening.RecordState.values()) {
      if (word.equals("record " + state.id())) {
        return new Happening.Recording(state);
      }
    }
    if (word.equals("clip off")) {
      return ClipMove.of(ClipMove.Act.OFF);
    }
    int space = line.indexOf(' ');
    String rest = space < 0 ? "" : line.substring(space + 1).trim();
    if (rest.isEmpty()) {
      return null;
    }
    return switch (word.substring(0, space)) {
      case "clip" -> ClipMove.at(ClipMove.Act.HELD, rest, null, null);
      case "changed" -> new Happening.SetChanged(rest);
      case "started" -> new Happening.LoadStarted(rest);
      default -> null;
    };
  }

  private void take(String line) {
    String word = line.toLowerCase(Locale.ROOT);
    switch (word) {
      case "", "off" -> watch.off(OffCause.USER);
      case "seen" -> watch.acknowledge("", 0);
      case "hands in", "hands-in" -> watch.mode(BenchMode.HANDS_IN, null, 0);
      case "soak" -> watch.mode(BenchMode.SOAK, awakeProblem, 0);
      case "usual" -> watch.mode(BenchMode.USUAL, null, 0);
      case "mode" -> watch.mode(watch.mode().mode().next(), awakeProblem, 0);
      case "mute", "sound" -> {
        if (sound != null) {
          sound.mute(word.equals("mute"));
        }
      }
      default -> {
        Happening what = happening(line);
        if (word.equals("mark") || word.startsWith("mark ")) {
          watch.mark(line.substring(4).trim());
        } else if (what != null) {
          watch.happened(what);
        } else {
          speech.err(Said.of("run-keys.is-not-known-there-are", line, KNOWN));
        }
      }
    }
  }
}
