package firstamp.window.watch;

import firstamp.bench.BenchSession;
import firstamp.model.TimeSource;
import firstamp.window.words.Words;

/**
 * Marks while hands are busy: one key puts it, a digit after it gives it one of nine set words, and
 * nothing has to be typed. Swing thread only.
 */
public final class MarkHand {
  /** So long a mark waits for its word. */
  static final long WAIT_NANOS = 10_000_000_000L;

  private static final int WORDS = 9;

  private final TimeSource time;
  private final Words words;
  private BenchSession session;
  private int before;
  private int chosen;
  private Long putNanos;

  public MarkHand(TimeSource time, Words words) {
    this.time = time;
    this.words = words;
  }

  /** Puts a mark now. */
  public void put(BenchSession into) {
    session = into;
    before = into.snapshot().marks().size();
    chosen = 0;
    putNanos = time.monotonicNanos();
    into.mark("");
  }

  /** The word of a digit for the latest mark; false if none waits for one. */
  public boolean word(int number) {
    boolean waits = waits();
    if (waits) {
      chosen = number;
      follow();
    }
    return waits;
  }

  /** Gives the word once the mark has its number. */
  public void follow() {
    if (putNanos != null && chosen > 0 && session.snapshot().marks().size() > before) {
      session.note(before + 1, words.get("mark.word." + chosen));
      putNanos = null;
    }
  }

  private boolean waits() {
    return putNanos != null && chosen == 0 && time.monotonicNanos() - putNanos < WAIT_NANOS;
  }

  /** The words to choose from while a mark waits; null = none does. */
  public String says() {
    if (!waits()) {
      return null;
    }
    StringBuilder all = new StringBuilder(words.get("mark.put"));
    for (int number = 1; number <= WORDS; number++) {
      all.append(number == 1 ? " " : ", ")
          .append(number)
          .append('\u00a0')
          .append(words.get("mark.word." + number));
    }
    return all.append('.').toString();
  }
}
