package firstamp.run.questions;

import firstamp.model.Difference;
import firstamp.model.ProbeEvent;
import firstamp.model.text.Worded;
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

  private static final Worded NOTHING = Worded.asIs("");

  private final Map<String, Worded> waiting = new LinkedHashMap<>();
  private final Set<String> answered = new HashSet<>();
  private final Map<String, Long> beforehand = new LinkedHashMap<>();
  private final boolean somebodyAnswers;
  private final List<String> also;
  private final Asking asking;
  private ProbeEvent.SwitchedOnAgain again;
  private boolean takenBack;

  /**
   * A gate whose questions are answered once.
   *
   * @param questionIds in the order in which they are asked; none = open from the start
   */
  public ArmGate(List<String> questionIds) {
    this(null, List.of(), true);
    questionIds.forEach(id -> waiting.put(id, NOTHING));
  }

  /**
   * A gate that asks before each switching on what is due then.
   *
   * @param asking knows what is due
   * @param also further questions, asked before the last one
   */
  public ArmGate(Asking asking, List<String> also) {
    this(asking, also, true);
    renew();
  }

  private ArmGate(Asking asking, List<String> also, boolean somebodyAnswers) {
    this.asking = asking;
    this.also = List.copyOf(also);
    this.somebodyAnswers = somebodyAnswers;
  }

  /** A gate that is open, where nobody answers what comes up later. */
  public static ArmGate alwaysOpen() {
    return new ArmGate(null, List.of(), false);
  }

  /** The same, whose questions were answered beforehand. */
  public static ArmGate answered(List<String> questionIds, long epochMs) {
    ArmGate gate = alwaysOpen();
    questionIds.forEach(id -> gate.beforehand.put(id, epochMs));
    return gate;
  }

  /** Asks again what is due now. */
  public synchronized void renew() {
    takenBack = false;
    if (asking == null) {
      return;
    }
    List<String> due = new ArrayList<>(asking.due());
    int last = due.indexOf(Asking.HANDS_OUT);
    due.addAll(last < 0 ? due.size() : last, also);
    waiting.clear();
    answered.clear();
    due.forEach(id -> waiting.put(id, NOTHING));
  }

  /**
   * The go is taken back: where the hands are is asked again; what was answered here stays so.
   *
   * @return false = there was no go, or nobody answers here
   */
  public synchronized boolean takeBack() {
    if (!somebodyAnswers || !waiting.isEmpty()) {
      return false;
    }
    answered.remove(Asking.HANDS_OUT);
    waiting.put(Asking.HANDS_OUT, NOTHING);
    takenBack = true;
    return true;
  }

  /** Whether a go was taken back and none has been given since. */
  public synchronized boolean takenBack() {
    return takenBack && !waiting.isEmpty();
  }

  /** A question was answered with yes. */
  public synchronized void yes(String questionId) {
    boolean asked = waiting.remove(questionId) != null;
    answered.add(questionId);
    if (asked && asking != null) {
      asking.yes(questionId);
    }
  }

  /**
   * Asks what has come up meanwhile.
   *
   * @param text whole sentences
   * @return false = nobody answers here
   */
  public synchronized boolean ask(String questionId, Worded text) {
    if (somebodyAnswers && !answered.contains(questionId)) {
      waiting.put(questionId, text);
    }
    return somebodyAnswers;
  }

  /** What was asked for is no question any more. */
  public synchronized void withdraw(String questionId) {
    waiting.remove(questionId);
  }

  /** Whether it was answered with yes. */
  synchronized boolean answered(String questionId) {
    return answered.contains(questionId);
  }

  /** Clips that are joined to nothing now; where one was moved, what is joined is asked again. */
  public synchronized void clips(Set<Integer> openRails) {
    if (asking != null && asking.clips(openRails)) {
      renew();
    }
  }

  /** The cable, a clip or a wire is another than it was. */
  public synchronized void hookUpChanged() {
    if (asking != null) {
      asking.hookUpChanged();
    }
  }

  /** What is different after a trip; goes with the next power-up. */
  public synchronized void again(ProbeEvent.SwitchedOnAgain what) {
    again = what;
    if (what.difference() == Difference.WIRE || what.difference() == Difference.PART) {
      hookUpChanged();
    }
  }

  /** What the person has told, to be put into the stream before the switch closes. */
  public synchronized List<ProbeEvent.Told> told(long micros) {
    List<ProbeEvent.Told> events = new ArrayList<>();
    if (asking != null) {
      events.addAll(asking.told(micros));
    }
    beforehand.forEach((id, then) -> events.add(new ProbeEvent.Answered(micros, id, then)));
    if (again != null) {
      events.add(
          new ProbeEvent.SwitchedOnAgain(
              micros,
              again.afterTrip(),
              again.difference(),
              again.rail(),
              again.ohm(),
              again.halfV()));
      again = null;
    }
    return events;
  }

  /** Whether nothing waits. */
  public synchronized boolean open() {
    return waiting.isEmpty();
  }

  /** What waits. */
  public synchronized List<OpenQuestion> questions() {
    List<OpenQuestion> questions = new ArrayList<>();
    waiting.forEach(
        (id, text) -> questions.add(new OpenQuestion(id, text == NOTHING ? null : text)));
    return questions;
  }
}
