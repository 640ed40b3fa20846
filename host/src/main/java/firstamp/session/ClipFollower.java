package firstamp.session;

import firstamp.emulate.Hands;
import firstamp.locate.ClipInput;
import firstamp.locate.ClipMark;
import firstamp.locate.ClipMarks;
import firstamp.locate.SheetPath;
import firstamp.locate.SignalGraph;
import firstamp.model.JobSheet;
import java.util.Objects;

/**
 * At an emulated bench nobody moves the clip: it goes where the marks of the power-up say it is,
 * and contacts are worked and joints are tapped when a mark says so.
 */
public final class ClipFollower extends ForwardingChainListener {
  private final SignalGraph graph;
  private final ClipMarks marks;
  private volatile Hands hands = Hands.NONE;
  private String tapped = "";

  /**
   * Follows nothing yet.
   *
   * @param graph the path, null = there is none: nothing moves
   * @param next hears everything too
   */
  public ClipFollower(SignalGraph graph, ChainListener next) {
    super(next);
    this.graph = graph;
    this.marks = graph == null ? null : new ClipMarks(graph);
  }

  /** Along the path of a sheet, if it names one. */
  public static ClipFollower of(JobSheet sheet) {
    SignalGraph graph = SheetPath.hasPath(sheet) ? SheetPath.graph(sheet) : null;
    return new ClipFollower(graph, new ChainListener() {});
  }

  /** Whose hands it is that move; safe from any thread. */
  public void hands(Hands emulated) {
    hands = Objects.requireNonNull(emulated, "emulated");
  }

  @Override
  public void mark(String text, double atMs) {
    ClipMark mark = marks == null ? null : marks.read(text);
    if (mark != null) {
      follow(mark);
    }
    super.mark(text, atMs);
  }

  private void follow(ClipMark mark) {
    boolean head = mark.input() == ClipInput.HEAD;
    switch (mark.act()) {
      case HELD -> hands.clipOn(mark.name(), graph.mode(mark.mode()).name(), head);
      case STROKE -> {
        behind(mark.name(), head);
        hands.work(mark.name());
      }
      case RESTING -> {
        tapped = mark.name();
        behind(mark.name(), head);
      }
      case TOUCHED -> hands.touch(tapped, true);
      case LEFT -> hands.touch(tapped, false);
      case OFF -> hands.clipOff();
      default -> {
        // Nothing is moved for what is only said.
      }
    }
  }

  private void behind(String joint, boolean head) {
    String point = graph.joints().get(graph.jointIndex(joint)).to();
    hands.clipOn(point, graph.modes().get(0).name(), head);
  }
}
