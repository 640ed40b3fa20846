package firstamp.window;

/**
 * What every page works with.
 *
 * @param words in the person's language
 * @param numbers in the person's language
 * @param palette colours
 * @param shell the window
 * @param desk the bench; null where the window was opened on one session only
 */
record Tools(Words words, Numbers numbers, Palette palette, Shell shell, Desk desk) {
  /** Why something failed, in the person's language. */
  String why(Exception failure) {
    return new Spoken(words.locale()).failure(failure);
  }

  Pieces pieces() {
    return new Pieces(words, palette);
  }
}
