package firstamp.run.questions;

import firstamp.model.Conditions;
import firstamp.model.JobSheet;
import firstamp.model.ProbeEvent;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * The questions before one set is switched on: which are due, and what was answered.
 *
 * <p>Safe from any thread.
 */
public final class Asking {
  /** Hands out: the last question. Its yes is the key that is held. */
  public static final String HANDS_OUT = "hands-out";

  private final AnswerBook book;
  private final List<Asked> all;
  private final String set;
  private final Set<Integer> openRails = new TreeSet<>();
  private boolean railsSeen;

  private Asking(AnswerBook book, String set, List<Asked> all) {
    this.book = book;
    this.set = set;
    this.all = List.copyOf(all);
  }

  /**
   * Questions about a set.
   *
   * @param book of what was answered
   * @param cautions question that shows them
   * @param effective sheet
   * @param label of the power-up: which wire is where
   * @param port of the probe box
   */
  public static Asking about(
      AnswerBook book, String cautions, JobSheet effective, String label, String port) {
    String set = effective.set().name();
    List<Asked> all = new ArrayList<>();
    all.add(cautions(cautions, set));
    all.addAll(Questions.lives(effective, label, port, book.stillHolding(set)));
    return new Asking(book, set, all);
  }

  /** Of an invented set, where nothing real is joined: the cautions, and where the hands are. */
  public static Asking practice(AnswerBook book, String cautions, JobSheet effective) {
    String set = effective.set().name();
    return new Asking(
        book, set, List.of(cautions(cautions, set), new Asked(HANDS_OUT, Asked.Life.BODY, set)));
  }

  private static Asked cautions(String id, String set) {
    return new Asked(id, Cautions.WHOLE.equals(id) ? Asked.Life.BODY : Asked.Life.BENCH, set);
  }

  /** What has to be asked now, in its order; the last one is where the hands are. */
  public List<String> due() {
    return all.stream().filter(asked -> !book.holds(asked)).map(Asked::id).toList();
  }

  /** Answered with yes. */
  public void yes(String id) {
    all.stream().filter(asked -> asked.id().equals(id)).forEach(book::answered);
  }

  /** A clip, the cable, a wire or a part is another: what is joined is asked about again. */
  public void hookUpChanged() {
    book.hookUpChanged(all);
  }

  /** Clips that are joined to nothing: where they are others than the last time, one was moved. */
  boolean clips(Set<Integer> open) {
    boolean moved = railsSeen && !openRails.equals(open);
    if (moved) {
      hookUpChanged();
    }
    railsSeen = true;
    openRails.clear();
    openRails.addAll(open);
    return moved;
  }

  /** How the set is left. */
  public Conditions conditions() {
    return book.conditions(set);
  }

  /** What was said, as events of a power-up. */
  List<ProbeEvent.Told> told(long micros) {
    List<ProbeEvent.Told> events = new ArrayList<>();
    if (conditions().said()) {
      events.add(new ProbeEvent.ConditionsSaid(micros, conditions()));
    }
    for (Asked asked : all) {
      Long then = book.answeredEpochMs(asked);
      if (then != null && !due().contains(asked.id())) {
        events.add(new ProbeEvent.Answered(micros, asked.id(), then));
      }
    }
    return events;
  }
}
