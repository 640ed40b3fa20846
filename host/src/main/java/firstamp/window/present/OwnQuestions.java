package firstamp.window.present;

import firstamp.window.present.BenchView.QuestionView;
import java.util.EnumMap;
import java.util.Map;

/**
 * The questions that the window asks by itself, before the session hears of a wish. Several may
 * wait; the one that stands first in {@link Kind} is shown first.
 */
public final class OwnQuestions {
  private final Map<Kind, Asked> waiting = new EnumMap<>(Kind.class);

  /** What is asked about. */
  public enum Kind {
    /** Closing while a set is watched. */
    CLOSE("window.close"),
    /** Leaving the set on alone. */
    SOAK("window.soak"),
    /** A wider limit. */
    WIDER("window.limit");

    private final String id;

    Kind(String id) {
      this.id = id;
    }

    public String id() {
      return id;
    }
  }

  private record Asked(QuestionView question, Runnable yes) {}

  /**
   * Asks.
   *
   * @param question whose identifier is that of the kind
   * @param yes what a yes does
   */
  public void ask(Kind kind, QuestionView question, Runnable yes) {
    waiting.put(kind, new Asked(question, yes));
  }

  public void withdraw(Kind kind) {
    waiting.remove(kind);
  }

  /** Whether this one is what is asked now. */
  public boolean asks(Kind kind) {
    return !waiting.isEmpty() && waiting.keySet().iterator().next() == kind;
  }

  /** The one that is due; null = none. */
  public QuestionView first() {
    return waiting.isEmpty() ? null : waiting.values().iterator().next().question();
  }

  /** Answers one; false if the question is not the window's. */
  public boolean answer(String id, boolean yes) {
    for (Kind kind : Kind.values()) {
      if (kind.id().equals(id)) {
        Asked asked = waiting.remove(kind);
        if (yes && asked != null) {
          asked.yes().run();
        }
        return true;
      }
    }
    return false;
  }
}
