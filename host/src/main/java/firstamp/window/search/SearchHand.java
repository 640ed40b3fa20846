package firstamp.window.search;

import firstamp.bench.BenchSession;
import firstamp.locate.signal.JointKind;
import firstamp.locate.signal.LocateAnswer;
import firstamp.locate.signal.SignalGraph;
import firstamp.model.ClipInput;
import firstamp.model.ClipMove;
import firstamp.study.SearchState;

/** What the person does in a search for a lost signal: each becomes an event of the power-up. */
public final class SearchHand {
  /** So many settled windows are wanted before a joint is touched. */
  static final int QUIET_WINDOWS = 2;

  private final BenchSession session;
  private int windowsAtTouch;

  public SearchHand(BenchSession session) {
    this.session = session;
  }

  /** The clip is on the point that was asked for, or comes off it. */
  public void hold(SearchState state, boolean on) {
    if (!on) {
      say(ClipMove.of(ClipMove.Act.OFF));
    } else if (state.held() == null) {
      LocateAnswer.Next next = state.search().answer().next();
      if (next != null) {
        ClipInput input = ClipInput.forLevel(next.expectedDbv());
        say(ClipMove.at(ClipMove.Act.HELD, next.point(), next.mode(), input));
      } else {
        stroke(state);
      }
    }
  }

  /** The signal is there, or gone, without a figure. */
  public void heard(SearchState state, ClipMove.Act act) {
    LocateAnswer.Next next = state.search().answer().next();
    if (next != null) {
      say(ClipMove.at(act, next.point(), next.mode(), null));
    }
  }

  /** The most likely contact is worked once; the level behind it follows. */
  public void stroke(SearchState state) {
    String joint = likeliest(state, JointKind.SWITCH);
    if (joint != null) {
      say(ClipMove.at(ClipMove.Act.STROKE, joint, null, ClipInput.METER));
    }
  }

  public void mended(SearchState state) {
    String joint = likeliest(state, null);
    if (joint != null) {
      say(ClipMove.at(ClipMove.Act.MENDED, joint, null, null));
    }
  }

  public void back() {
    say(ClipMove.of(ClipMove.Act.BACK));
  }

  /** A level read off another meter; false if none is asked for. */
  public boolean typed(SearchState state, double dbv) {
    LocateAnswer.Next next = state.search().answer().next();
    if (next != null) {
      session.happened(ClipMove.typed(next.point(), next.mode(), dbv));
    }
    return next != null;
  }

  /**
   * One key, three times: the clip rests behind the most likely joint; it is being tapped; it is
   * left alone and the clip comes off. A press that comes too early for anything to be told is left
   * out.
   */
  public void tap(SearchState state) {
    int windows = state.courseDbv().size();
    if (state.held() == null || state.held().act() != ClipMove.Act.RESTING) {
      String joint = likeliest(state, null);
      if (joint != null) {
        say(ClipMove.at(ClipMove.Act.RESTING, joint, null, ClipInput.METER));
      }
    } else if (state.touching()) {
      if (windows > windowsAtTouch) {
        say(ClipMove.of(ClipMove.Act.LEFT));
        say(ClipMove.of(ClipMove.Act.OFF));
      }
    } else if (windows >= QUIET_WINDOWS) {
      windowsAtTouch = windows;
      say(ClipMove.of(ClipMove.Act.TOUCHED));
    }
  }

  private void say(ClipMove move) {
    session.happened(move);
  }

  private static String likeliest(SearchState state, JointKind kind) {
    SignalGraph graph = state.search().graph();
    return state.search().answer().odds().stream()
        .map(LocateAnswer.JointOdds::joint)
        .filter(joint -> kind == null || graph.joints().get(graph.jointIndex(joint)).kind() == kind)
        .findFirst()
        .orElse(null);
  }
}
