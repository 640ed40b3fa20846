package firstamp.window.search;

import firstamp.window.widgets.Tone;
import java.util.List;

/**
 * Where one wire of unknown place stands, in words; free of Swing.
 *
 * @param tone of the sentence
 * @param title name of the wire, and which of how many
 * @param headline what to do next, short
 * @param action the whole sentence
 * @param warnings before power
 * @param places the three to try first
 * @param about build, reach, where it was found; colours last
 * @param done what was done about it, the latest first
 * @param table all places: name, what is there, how likely, harm, reason
 */
public record WireView(
    Tone tone,
    String title,
    String headline,
    String action,
    List<String> warnings,
    List<PlaceView> places,
    String about,
    List<String> done,
    List<List<String>> table) {

  /** The same with the reason why nothing can be measured now. */
  public WireView refused(String why, String whole) {
    return new WireView(Tone.CAUTION, title, why, whole, warnings, places, about, done, table);
  }

  /**
   * A place.
   *
   * @param name as the person calls it
   * @param likely in words
   * @param harm what a wrong guess does
   * @param reason why it is struck out or must wait, empty = it can be tried
   * @param tone state
   */
  public record PlaceView(String name, String likely, String harm, String reason, Tone tone) {}
}
