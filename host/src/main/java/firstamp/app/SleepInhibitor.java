package firstamp.app;

import firstamp.model.text.Worded;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.concurrent.TimeUnit;

/**
 * Keeps the computer from sleeping while the set is on, through the system's own tool as a child
 * process.
 *
 * <p>{@link #keep} and {@link #let} may be called as often as wanted; both start or end a process
 * and belong on a thread that does not paint. When it does not work, {@link #problem} says so. Safe
 * to share.
 */
public final class SleepInhibitor {
  private static final String BUNDLE = "firstamp.run.modes";
  private static final long GIVES_UP_AT_ONCE_MS = 300;

  private final Starter starter;
  private final List<String> command;
  private Child child;
  private volatile Worded problem;

  /** Starts a child process. */
  interface Starter {
    /**
     * Starts it.
     *
     * @param command program and arguments
     * @throws IOException if there is no such program
     */
    Child start(List<String> command) throws IOException;
  }

  /** A running child process. */
  interface Child {
    boolean alive();

    /** Ends it. */
    void end();

    /** Waits up to a limit; true if it has ended by itself. */
    boolean endedWithin(long ms) throws InterruptedException;
  }

  SleepInhibitor(Starter starter, List<String> command) {
    this.starter = Objects.requireNonNull(starter, "starter");
    this.command = command == null ? null : List.copyOf(command);
  }

  /** With the tool of this system. */
  public static SleepInhibitor ofThisSystem() {
    return new SleepInhibitor(
        SleepInhibitor::startProcess,
        commandFor(System.getProperty("os.name"), ProcessHandle.current().pid()));
  }

  /**
   * The command that keeps a system awake as long as it runs and this process lives.
   *
   * @return null for a system of which no tool is known
   */
  static List<String> commandFor(String system, long ownPid) {
    String name = system.toLowerCase(Locale.ROOT);
    if (name.startsWith("mac")) {
      return List.of("caffeinate", "-dims", "-w", Long.toString(ownPid));
    }
    if (name.startsWith("windows")) {
      // 0x80000003: continuous, system and display required. Ends with this process.
      String script =
          "$t=Add-Type -PassThru -Name S -Namespace F -MemberDefinition '[DllImport(\"kernel32.dll\")]"
              + "public static extern uint SetThreadExecutionState(uint f);';"
              + "if($t::SetThreadExecutionState(2147483651) -eq 0){exit 1};"
              + "Wait-Process -Id "
              + ownPid;
      return List.of("powershell", "-NoProfile", "-NonInteractive", "-Command", script);
    }
    if (name.contains("linux")) {
      return List.of(
          "systemd-inhibit",
          "--what=sleep:idle:handle-lid-switch",
          "--who=Firstamp",
          "--why=a set is on and being watched",
          "--mode=block",
          "tail",
          "--pid=" + ownPid,
          "-f",
          "/dev/null");
    }
    return null;
  }

  /** From now on the computer stays awake. */
  public synchronized void keep() {
    if (child != null && child.alive()) {
      return;
    }
    if (command == null) {
      problem = Worded.of(BUNDLE, "awake.unknown");
      return;
    }
    try {
      child = starter.start(command);
      if (child.endedWithin(GIVES_UP_AT_ONCE_MS)) {
        child = null;
        problem = Worded.of(BUNDLE, "awake.ended", command.get(0));
      } else {
        problem = null;
      }
    } catch (IOException missing) {
      child = null;
      problem = Worded.of(BUNDLE, "awake.missing", command.get(0));
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  /** From now on the computer may sleep. */
  public synchronized void let() {
    if (child != null) {
      child.end();
      child = null;
    }
  }

  /** Why the computer may go to sleep all the same; null = it does not, or was not asked for. */
  public Worded problem() {
    return problem;
  }

  private static Child startProcess(List<String> command) throws IOException {
    Process process =
        new ProcessBuilder(command)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    process.getOutputStream().close();
    return new Child() {
      @Override
      public boolean alive() {
        return process.isAlive();
      }

      @Override
      public void end() {
        process.descendants().forEach(ProcessHandle::destroy);
        process.destroy();
      }

      @Override
      public boolean endedWithin(long ms) throws InterruptedException {
        return process.waitFor(ms, TimeUnit.MILLISECONDS);
      }
    };
  }
}
