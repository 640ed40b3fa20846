package firstamp.cli.output;

import firstamp.model.TimeSource;
import firstamp.model.text.Worded;
import java.io.PrintStream;

/** Says on standard error how far a command has got, once a second and from the first second on. */
public final class Progress {
  private static final long EVERY_NANOS = 1_000_000_000L;

  private final Worded what;
  private final Speech speech;
  private final TimeSource time;
  private final PrintStream err;
  private long steps;
  private long nextNanos;

  public Progress(Worded what, TimeSource time, PrintStream err, Speech speech) {
    this.speech = speech;
    this.what = what;
    this.time = time;
    this.err = err;
    this.nextNanos = time.monotonicNanos() + EVERY_NANOS;
  }

  /** One more is done. */
  void step() {
    steps++;
    // The clock is asked now and then only: a step may be a row out of millions.
    if ((steps & 255) == 0 && time.monotonicNanos() >= nextNanos) {
      nextNanos = time.monotonicNanos() + EVERY_NANOS;
      err.println("firstamp: " + speech.in(Said.of("progress.so-far", what, steps)));
    }
  }
}
