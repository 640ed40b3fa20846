package firstamp.window.page;

/**
 * What is kept as evidence takes the same key twice: a digit that was meant for something else
 * writes nothing. Swing thread only.
 */
public final class Twice {
  private int waiting = -1;

  /** Whether a key that was pressed now was pressed before, with no other in between. */
  public boolean pressed(int key) {
    boolean again = waiting == key;
    waiting = again ? -1 : key;
    return again;
  }

  /** Something else was pressed. */
  public void forget() {
    waiting = -1;
  }

  /** The caption of a control without its key: "1 It is there" is "It is there". */
  public static String caption(String flow) {
    return flow.substring(flow.indexOf("  ") + 2);
  }
}
