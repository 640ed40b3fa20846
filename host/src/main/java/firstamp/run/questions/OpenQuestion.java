package firstamp.run.questions;

import firstamp.model.text.Worded;

/**
 * A question that must be answered before the switch may close. The words for the known ones are
 * the window's.
 *
 * @param id {@code cautions} (the whole page), {@code cautions-short} (two lines, the set was seen
 *     before), {@code floating-supply}, {@code above-60}, {@code no-fuse}, {@code soak} (nobody
 *     will watch), or another one
 * @param text words for one that the window does not know, null otherwise
 */
public record OpenQuestion(String id, Worded text) {}
