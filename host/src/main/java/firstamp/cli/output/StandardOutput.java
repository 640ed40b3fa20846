package firstamp.cli.output;

import firstamp.model.text.FailureWords;
import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.util.Objects;
import java.util.Set;

/**
 * Standard output that notices when it can no longer be written (full disk, closed pipe): that is
 * reported at once, and the exit code says so. Everything else that a command does continues: a set
 * stays watched, its log is written. Safe to share.
 */
public final class StandardOutput extends OutputStream {
  private static final int BUFFER_BYTES = 8192;
  private static final Set<String> LIVE = Set.of("demo", "watch");

  private final OutputStream out;
  private final boolean live;
  private final PrintStream err;
  private final Speech speech;
  private boolean broken;

  /**
   * On a stream.
   *
   * @param command that prints
   * @param err where a failure is reported
   */
  StandardOutput(OutputStream out, String command, PrintStream err) {
    this(out, command, err, Speech.ENGLISH);
  }

  private StandardOutput(OutputStream out, String command, PrintStream err, Speech speech) {
    this.speech = speech;
    this.out = Objects.requireNonNull(out, "out");
    this.live = LIVE.contains(command);
    this.err = Objects.requireNonNull(err, "err");
  }

  /** Takes the place of the process's standard output. */
  public static StandardOutput install(String... arguments) {
    StandardOutput output =
        new StandardOutput(
            new FileOutputStream(FileDescriptor.out),
            arguments.length == 0 ? "" : arguments[0],
            System.err,
            Speech.askedFor(arguments));
    Charset letters =
        Charset.forName(System.getProperty("sun.stdout.encoding", Charset.defaultCharset().name()));
    System.setOut(new PrintStream(new BufferedOutputStream(output, BUFFER_BYTES), true, letters));
    return output;
  }

  @Override
  public void write(int one) {
    write(new byte[] {(byte) one}, 0, 1);
  }

  @Override
  public synchronized void write(byte[] bytes, int offset, int length) {
    if (broken) {
      return;
    }
    try {
      out.write(bytes, offset, length);
    } catch (IOException failed) {
      broken = true;
      err.println(
          "firstamp: "
              + speech.in(
                  Said.of(
                      live ? "standard-output.live" : "standard-output.incomplete",
                      FailureWords.worded(failed))));
    }
  }

  /** Exit code of a command that ended with this one. */
  public synchronized int exitCode(int code) {
    boolean done = code == ExitCode.NORMAL || code == ExitCode.FINDING;
    return broken && done ? ExitCode.IO_ERROR : code;
  }
}
