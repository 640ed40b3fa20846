package firstamp.locate.wire;

import firstamp.locate.odds.OddsWord;
import java.util.List;

/**
 * State of a wire of unknown place.
 *
 * @param wire by name
 * @param state of the wire
 * @param sentence for the person: what to do next, or the verdict
 * @param warnings before power, most urgent first
 * @param places all of them in the order to try: harm first, then what is learnt; ruled out last
 * @param next the trial to make, null unless {@code state} is TRY
 * @param found what reads as a short, null unless {@code state} is FIND_SHORT
 */
public record WireAnswer(
    String wire,
    State state,
    String sentence,
    List<String> warnings,
    List<PlaceOdds> places,
    Trial next,
    ShortReading found) {
  /** Copies the lists. */
  public WireAnswer {
    warnings = List.copyOf(warnings);
    places = List.copyOf(places);
  }

  /** States of a wire. */
  public enum State {
    /** Readings contradict each other. */
    MEASURE_AGAIN("measure-again"),
    /** A rail or the wire reads as a short: no power before that is found. */
    FIND_SHORT("find-short"),
    /** Ohms first, supply off. */
    CHECK_COLD("check-cold"),
    /** Find out whether it is a source, a load or dead. */
    SOURCE_TEST("source-test"),
    /** Join it somewhere. */
    TRY("try"),
    /** One figure speaks for a place; a second, independent one is wanted. */
    FITS("fits"),
    /** Two independent figures agree. */
    BELONGS("belongs"),
    /** No place is left. */
    NO_PLACE_LEFT("no-place-left");

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
   * Odds of one place.
   *
   * @param place by name
   * @param harm 1 = little, 4 = much
   * @param share of the explanations
   * @param word for people
   * @param reason why it is ruled out or must wait, null = it can be tried
   */
  public record PlaceOdds(String place, int harm, double share, OddsWord word, String reason) {}

  /**
   * A trial to make.
   *
   * @param place by name
   * @param throughOhm resistor to join through first, null = lamp or supply limit
   * @param worstA current if the guess is wrong in the worst way
   * @param worstW heat in the resistor, or in what is joined, then
   * @param limitA limit of the trial
   */
  public record Trial(
      String place, Integer throughOhm, double worstA, double worstW, double limitA) {}
}
