package firstamp.window.watch;

/** What a key or a control of the watching page can ask for. */
interface BenchActions {
  /** Opens the switch; in a replay holds or goes on. */
  void offOrHold();

  /** The person has seen the alarms; false if none waits. */
  boolean seen();

  /** Puts a mark. */
  void mark();

  /** Says that something was changed at the set. */
  void changed();

  /** Says that the set records, that it does not, that it is not known: in turn. */
  void recording();

  /** Says yes to the question shown; false if none is. */
  boolean yes();

  /** Enter: takes the limit held, or says yes where leaving is not what is asked. */
  boolean goOn();

  /** Why it was switched off, by its digit; nothing where it is not asked. */
  void why(int number);

  /** The key that switches on goes down, also while it repeats itself, or up. */
  void hold(boolean down);

  /** Says no to the question shown; where none is, goes back. */
  void no();

  /** To the page with the choice of a port, where no probe box answered; false where one did. */
  boolean otherPort();

  /** Asks whether to close the switch again after a trip. */
  void restore();

  /** Trip picture or strips. */
  void toggleView();

  /** The other alarms. */
  void toggleMore();

  /** Follows the newest reading. */
  void follow();

  /** Shows less or more time. */
  void zoom(double factor);

  /** Moves along the time. */
  void pan(double share);

  /** Replay: next event or the one before. */
  void jump(boolean forward);

  /** Goes on to the verdict; false while there is none. */
  boolean next();

  /** Back to the first screen; asks while the set is being watched. */
  void home();

  /** Replay: one reading on. */
  void step();

  /** Takes hold of the next limit. */
  void nextLimit();

  /** Moves the limit held by steps; false if none is held. */
  boolean nudgeLimit(int steps);

  /** Words for the marks. */
  void toggleNotes();

  /** Replay: what other limits would have done. */
  void toggleWhatIf();

  /** Hands go into the set, or are out again. */
  void handsIn();

  /** Nobody will watch, or somebody does again; asks first. */
  void soak();

  /** Silences what is heard, or lets it be heard again. */
  void toggleSound();

  /** Looks for a lost signal, where the sheet names a path. */
  void search();

  /** Opens the wires of unknown place, where the sheet names some. */
  void wires();
}
