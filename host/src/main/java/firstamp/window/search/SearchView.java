package firstamp.window.search;

import firstamp.window.widgets.Tone;
import java.util.List;

/**
 * Where the search for a lost signal stands, in words; free of Swing.
 *
 * @param tone of the sentence
 * @param headline the one sentence: where to measure next, or what was found
 * @param action with which input, what to expect, what the answer would mean
 * @param boxes points of the path in this mode
 * @param lines joints between them
 * @param columns of the drawing
 * @param rows of the drawing
 * @param likely the three joints that are most likely, one line each
 * @param done what was measured so far, the latest first
 * @param hold what the clip shows now, empty = nothing is held
 * @param spoken the drawing in words
 */
public record SearchView(
    Tone tone,
    String headline,
    String action,
    List<Box> boxes,
    List<Line> lines,
    int columns,
    int rows,
    List<String> likely,
    List<String> done,
    String hold,
    String spoken) {

  /**
   * A point.
   *
   * @param column of the drawing
   * @param row of the drawing
   * @param name as the person calls it
   * @param level what was found there, or what is expected
   * @param found whether it was measured
   * @param tone as it should be, lost, to be measured next
   */
  public record Box(int column, int row, String name, String level, boolean found, Tone tone) {}

  /**
   * A joint.
   *
   * @param from index of a box
   * @param to index of a box
   * @param name as the person calls it
   * @param suspect whether it is one of the likely ones
   */
  public record Line(int from, int to, String name, boolean suspect) {}
}
