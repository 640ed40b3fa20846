package firstamp.session;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Questions that must be answered with yes before the switch may close. Safe from any thread. */
public final class ArmGate {
  private final Set<String> waiting = new LinkedHashSet<>();

  /**
   * A gate.
   *
   * @param questionIds in the order in which they are asked; none = open from the begin
   */
  public ArmGate(List<String> questionIds) {
    waiting.addAll(questionIds);
  }

  /** A gate that is open. */
  public static ArmGate alwaysOpen() {
    return new ArmGate(List.of());
  }

  /** A question was answered with yes. */
  public synchronized void yes(String questionId) {
    waiting.remove(questionId);
  }

  /** Whether nothing waits. */
  public synchronized boolean open() {
    return waiting.isEmpty();
  }

  /** What waits. */
  public synchronized List<Snapshot.Question> questions() {
    List<Snapshot.Question> questions = new ArrayList<>();
    for (String id : waiting) {
      questions.add(new Snapshot.Question(id, null));
    }
    return questions;
  }
}
