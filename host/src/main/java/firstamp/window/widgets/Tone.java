package firstamp.window.widgets;

/** How urgent something is; always shown with a word and a shape, never by hue alone. */
public enum Tone {
  /** No state. */
  PLAIN,
  /** As it should be. */
  CALM,
  /** Something must be answered. */
  ASK,
  /** Not as it should be: look soon. */
  CAUTION,
  /** Danger: act now. */
  ALARM
}
