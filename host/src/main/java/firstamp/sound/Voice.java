package firstamp.sound;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;

/**
 * Speaks through a speech command of the system, if there is one. One sentence at a time: a new one
 * ends the one being spoken, as the later is the more urgent to hear.
 *
 * <p>Its thread {@code voice} starts the processes, so that no caller waits for one. Safe to share.
 */
final class Voice implements AutoCloseable {
  private static final int LONGEST_TEXT = 400;

  private final List<String> command;
  private final Starter starter;
  private final Object lock = new Object();
  private Process speaking;
  private String next;
  private Thread thread;
  private boolean closing;

  /** Starts a process; for tests. */
  @FunctionalInterface
  interface Starter {
    Process start(List<String> command) throws IOException;
  }

  Voice(List<String> command, Starter starter) {
    this.command = command == null ? null : List.copyOf(command);
    this.starter = Objects.requireNonNull(starter, "starter");
  }

  /** The voice of this system; {@link #exists} says whether there is one. */
  static Voice ofThisSystem() {
    String path = System.getenv("PATH");
    return new Voice(
        commandFor(System.getProperty("os.name"), path == null ? "" : path), Voice::startProcess);
  }

  /** The command to which a text is added, null = the system has none. */
  static List<String> commandFor(String system, String searchPath) {
    boolean windows = system.toLowerCase(Locale.ROOT).startsWith("windows");
    List<List<String>> known =
        List.of(
            List.of("spd-say", "--wait", "--"),
            List.of("espeak-ng", "--"),
            List.of("espeak", "--"),
            List.of("say", "--"));
    for (List<String> candidate : known) {
      for (String folder : searchPath.split(windows ? ";" : ":")) {
        if (folder.isEmpty()) {
          continue;
        }
        Path program = Path.of(folder, candidate.get(0));
        if (Files.isRegularFile(program) && Files.isExecutable(program)) {
          return candidate;
        }
      }
    }
    return null;
  }

  private static Process startProcess(List<String> command) throws IOException {
    return new ProcessBuilder(command)
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .redirectError(ProcessBuilder.Redirect.DISCARD)
        .redirectInput(ProcessBuilder.Redirect.from(nothing()))
        .start();
  }

  private static java.io.File nothing() {
    return new java.io.File(
        System.getProperty("os.name").toLowerCase(Locale.ROOT).startsWith("windows")
            ? "NUL"
            : "/dev/null");
  }

  /** Whether this system can speak. */
  boolean exists() {
    return command != null;
  }

  /** Speaks; returns at once. Without a voice nothing happens. */
  void say(String text) {
    if (command == null) {
      return;
    }
    synchronized (lock) {
      next = text;
      if (thread == null) {
        thread = new Thread(this::work, "voice");
        thread.setDaemon(true);
        thread.start();
      }
      lock.notifyAll();
    }
  }

  private void work() {
    try {
      while (true) {
        String text;
        synchronized (lock) {
          while (next == null && !closing) {
            lock.wait();
          }
          if (closing) {
            return;
          }
          text = next;
          next = null;
        }
        hush();
        speak(text);
      }
    } catch (InterruptedException stop) {
      Thread.currentThread().interrupt();
    }
  }

  private void speak(String text) {
    List<String> whole = new ArrayList<>(command);
    String words = text.strip().replaceAll("\\s+", " ");
    whole.add(words.length() > LONGEST_TEXT ? words.substring(0, LONGEST_TEXT) : words);
    try {
      Process started = starter.start(whole);
      synchronized (lock) {
        speaking = started;
      }
    } catch (IOException gone) {
      // The program was there a moment ago; an alarm is heard and seen without it as well.
      synchronized (lock) {
        speaking = null;
      }
    }
  }

  /** Stops speaking; does not wait. */
  void hush() {
    synchronized (lock) {
      if (speaking != null) {
        speaking.destroy();
        speaking = null;
      }
    }
  }

  /** Lets a sentence in progress be finished and ends the thread. */
  @Override
  public void close() {
    synchronized (lock) {
      closing = true;
      lock.notifyAll();
    }
  }
}
