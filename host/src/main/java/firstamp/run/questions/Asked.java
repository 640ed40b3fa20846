package firstamp.run.questions;

/**
 * A question before the switch may close, and how long its answer holds.
 *
 * @param id of the question
 * @param life how long a yes holds
 * @param about what the answer is about: where this changes, it is asked again
 */
public record Asked(String id, Life life, String about) {
  /** How long an answer holds. */
  public enum Life {
    /** Things of the day: until midnight, for the same supply. */
    BENCH,
    /** What is joined to what: an hour, while nothing of it changes. */
    HOOK_UP,
    /** Where the hands are: this once. */
    BODY
  }

  String key() {
    return id + " " + about;
  }
}
