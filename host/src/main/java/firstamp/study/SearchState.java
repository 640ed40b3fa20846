package firstamp.study;

import firstamp.locate.signal.LocateSession;
import firstamp.locate.signal.SettledLevel;
import firstamp.model.ClipMove;
import java.util.List;

/**
 * Where the search for a lost signal stands in a power-up; immutable.
 *
 * @param search path, rail alarms and what was measured so far
 * @param held what the clip is on or what is being worked, null = nothing
 * @param level of what is or was held last, null = none yet
 * @param courseDbv levels of the present hold, one per 200 ms
 * @param strokes that are over, of a contact being worked
 * @param touching whether the joint that the clip rests behind is being tapped
 */
public record SearchState(
    LocateSession search,
    ClipMove held,
    SettledLevel level,
    List<Double> courseDbv,
    int strokes,
    boolean touching) {
  /** Copies the list. */
  public SearchState {
    courseDbv = List.copyOf(courseDbv);
  }

  /** Nothing is being tapped. */
  public SearchState(
      LocateSession search,
      ClipMove held,
      SettledLevel level,
      List<Double> courseDbv,
      int strokes) {
    this(search, held, level, courseDbv, strokes, false);
  }
}
