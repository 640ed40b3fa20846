package firstamp.cli.command;

import firstamp.cli.run.HeadlessRun;
import firstamp.emulate.bench.Hands;
import firstamp.locate.signal.JointKind;
import firstamp.locate.signal.LocateAnswer;
import firstamp.locate.signal.LocateSession;
import firstamp.locate.signal.SignalGraph;
import firstamp.model.ClipInput;
import firstamp.model.ClipMove;
import firstamp.model.OffCause;
import firstamp.model.samples.LevelWindow;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ForwardingChainListener;
import firstamp.run.ClipFollower;
import firstamp.run.LiveRun;
import firstamp.study.SearchState;
import firstamp.study.SignalSearch;

/**
 * A person at the emulated bench who does what the search for a lost signal asks: says that the
 * head is silent, holds the clip where it should be measured, works the contact that was found.
 */
final class DemoHands implements HeadlessRun.Companion {
  /** After the tone has come, windows. */
  private static final int WAIT = 8;

  private static final int HOLD = 6;
  private static final int PER_STROKE = 3;
  private static final int STROKES = 5;

  /** More steps than any search along this path takes. */
  private static final int MOST = 20;

  private final SignalSearch search;
  private final SignalGraph graph;
  private final String complaint;
  private final String seen;
  private ClipFollower follower;
  private LiveRun watch;
  private boolean on;
  private int left = WAIT;
  private int steps;
  private int strokesLeft;
  private String worked;

  /**
   * A person.
   *
   * @param graph the path
   * @param complaint the point where the signal is missing
   * @param seen the point where it can be seen without a clip: the meter moves
   */
  DemoHands(SignalGraph graph, String complaint, String seen) {
    this.seen = seen;
    this.graph = graph;
    this.search = new SignalSearch(graph);
    this.complaint = complaint;
  }

  void at(Hands emulated) {
    follower.hands(emulated);
  }

  @Override
  public void begins(LiveRun run) {
    watch = run;
  }

  SearchState state() {
    return search.state();
  }

  @Override
  public ChainListener listen(ChainListener output) {
    follower = new ClipFollower(graph, search.before(output));
    return new ForwardingChainListener(follower) {
      @Override
      public void on() {
        on = true;
        super.on();
      }

      @Override
      public void off(OffCause by, double atMs) {
        on = false;
        super.off(by, atMs);
      }

      @Override
      public void levels(LevelWindow window) {
        super.levels(window);
        if (on && --left <= 0) {
          act();
        }
      }
    };
  }

  /** Does the next thing; everything is recorded as an event, so that it is in the log. */
  private void act() {
    if (steps++ == 0) {
      String mode = graph.modes().get(0).name();
      say(ClipMove.at(ClipMove.Act.GONE, complaint, mode, null));
      say(ClipMove.at(ClipMove.Act.THERE, seen, mode, null));
      left = 1;
      return;
    }
    if (strokesLeft > 0) {
      stroke();
      return;
    }
    if (search.state().held() != null) {
      say(ClipMove.of(ClipMove.Act.OFF));
      left = 1;
      return;
    }
    LocateSession now = search.state().search();
    LocateAnswer answer = now.answer();
    if (answer.state() == LocateAnswer.State.MEASURE && steps < MOST) {
      hold(answer.next());
    } else if (worked == null && answer.state() == LocateAnswer.State.FOUND) {
      work(answer.odds().get(0).joint());
    } else {
      watch.off(OffCause.USER);
      left = Integer.MAX_VALUE;
    }
  }

  private void hold(LocateAnswer.Next next) {
    ClipInput input = ClipInput.forLevel(next.expectedDbv());
    say(ClipMove.at(ClipMove.Act.HELD, next.point(), next.mode(), input));
    left = HOLD;
  }

  /** A contact is worked with the clip behind it; anything else is mended at the bench. */
  private void work(String joint) {
    worked = joint;
    SignalGraph.PathJoint found = graph.joints().get(graph.jointIndex(joint));
    if (found.kind() == JointKind.SWITCH) {
      strokesLeft = STROKES;
      left = 1;
    } else {
      left = 1;
    }
  }

  private void stroke() {
    strokesLeft--;
    say(ClipMove.at(ClipMove.Act.STROKE, worked, null, ClipInput.METER));
    left = PER_STROKE;
  }

  private void say(ClipMove move) {
    watch.happened(move);
  }
}
