package firstamp.window.page;

import firstamp.app.Desk;
import firstamp.window.widgets.Palette;
import firstamp.window.widgets.Pieces;
import firstamp.window.words.Numbers;
import firstamp.window.words.Spoken;
import firstamp.window.words.Words;

/**
 * What every page works with.
 *
 * @param words in the person's language
 * @param numbers in the person's language
 * @param palette colours
 * @param shell the window
 * @param desk the bench; null where the window was opened on one session only
 */
public record Tools(Words words, Numbers numbers, Palette palette, Shell shell, Desk desk) {
  /** Why something failed, in the person's language. */
  public String why(Exception failure) {
    return new Spoken(words.locale()).failure(failure);
  }

  public Pieces pieces() {
    return new Pieces(words, palette);
  }
}
