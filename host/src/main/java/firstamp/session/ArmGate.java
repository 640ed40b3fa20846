package firstamp.session;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Questions that must be answered with yes before the switch may close. Safe from any thread. */
public final class ArmGate {
  /** The bench log cannot be written: switch on all the same? */
  public static final String NOT_LOGGING = "not-logging";

  private final Map<String, String> waiting = new LinkedHashMap<>();
  private final Set<String> answered = new HashSet<>();
  private final boolean somebodyAnswers;

  /**
   * A gate.
   *
   * @param questionIds in the order in which they are asked; none = open from the begin
   */
  public ArmGate(List<String> questionIds) {
    this(questionIds, true);
  }

  private ArmGate(List<String> questionIds, boolean somebodyAnswers) {
    questionIds.forEach(id -> waiting.put(id, ""));
    this.somebodyAnswers = somebodyAnswers;
  }

  /** A gate that is open, where nobody answers what comes up later. */
  public static ArmGate alwaysOpen() {
    return new ArmGate(List.of(), false);
  }

  /** A question was answered with yes. */
  public synchronized void yes(String questionId) {
    waiting.remove(questionId);
    answered.add(questionId);
  }

  /**
   * Asks what has come up meanwhile.
   *
   * @param text whole sentences
   * @return false = nobody answers here
   */
  synchronized boolean ask(String questionId, String text) {
    if (somebodyAnswers && !answered.contains(questionId)) {
      waiting.put(questionId, text);
    }
    return somebodyAnswers;
  }

  /** What was asked for is no question any more. */
  synchronized void withdraw(String questionId) {
    waiting.remove(questionId);
  }

  /** Whether it was answered with yes. */
  synchronized boolean answered(String questionId) {
    return answered.contains(questionId);
  }

  /** Whether nothing waits. */
  public synchronized boolean open() {
    return waiting.isEmpty();
  }

  /** What waits. */
  public synchronized List<Snapshot.Question> questions() {
    List<Snapshot.Question> questions = new ArrayList<>();
    waiting.forEach(
        (id, text) -> questions.add(new Snapshot.Question(id, text.isEmpty() ? null : text)));
    return questions;
  }
}
