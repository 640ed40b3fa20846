package firstamp.locate.signal;

import firstamp.locate.odds.OddsWord;
import firstamp.model.text.Worded;
import java.util.List;

/**
 * State of the search for a lost signal.
 *
 * @param state of the search
 * @param words for the person: what to do next, or the verdict
 * @param next where to measure, null when there is nothing to measure
 * @param odds of all joints, most likely first
 * @param twoLikely whether two joints at fault are more likely than one
 * @param remarks of contacts worked and joints tapped, in order
 */
public record LocateAnswer(
    State state,
    Worded words,
    Next next,
    List<JointOdds> odds,
    boolean twoLikely,
    List<Worded> remarks) {
  /** Copies the lists. */
  public LocateAnswer {
    odds = List.copyOf(odds);
    remarks = List.copyOf(remarks);
  }

  /** In English, as log and JSON have it. */
  public String sentence() {
    return words.english();
  }

  /** States of a search. */
  public enum State {
    /** A rail alarm is active; supplies first. */
    REFUSED("refused"),
    /** Something can be measured. */
    MEASURE("measure"),
    /** One joint is named. */
    FOUND("found"),
    /** Several joints are left that no point lies between. */
    NOT_TOLD_APART("not-told-apart"),
    /** The path carries the signal. */
    NOTHING_FOUND("nothing-found");

    private final String id;

    State(String id) {
      this.id = id;
    }

    /** Identifier in JSON lines. */
    public String id() {
      return id;
    }
  }

  /**
   * Where to measure.
   *
   * @param point by name
   * @param mode of the switches
   * @param expectedDbv level when all is well, null = not known
   * @param bits that are expected to be learnt
   * @param ifThere joints left when the signal is there, most likely first
   * @param ifGone joints left when it is not
   */
  public record Next(
      String point,
      String mode,
      Double expectedDbv,
      double bits,
      List<String> ifThere,
      List<String> ifGone) {
    /** Copies the lists. */
    public Next {
      ifThere = List.copyOf(ifThere);
      ifGone = List.copyOf(ifGone);
    }
  }

  /**
   * Odds of one joint.
   *
   * @param joint by name
   * @param share of the explanations in which it is at fault
   * @param word for people
   */
  public record JointOdds(String joint, double share, OddsWord word) {}
}
