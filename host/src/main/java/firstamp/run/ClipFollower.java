package firstamp.run;

import firstamp.emulate.bench.Hands;
import firstamp.locate.SheetPath;
import firstamp.locate.signal.SignalGraph;
import firstamp.model.ClipInput;
import firstamp.model.ClipMove;
import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ForwardingChainListener;
import java.util.Objects;

/**
 * At an emulated bench nobody moves the clip: it goes where the events of the power-up say it is,
 * and contacts are worked and joints are tapped when an event says so.
 */
public final class ClipFollower extends ForwardingChainListener {
  private final SignalGraph graph;
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
  public void happened(Happening what, double atMs) {
    if (graph != null && what instanceof ClipMove move && graph.knows(move)) {
      follow(move);
    }
    super.happened(what, atMs);
  }

  private void follow(ClipMove move) {
    boolean head = graph.inputOf(move) == ClipInput.HEAD;
    switch (move.act()) {
      case HELD -> hands.clipOn(move.name(), graph.mode(move.mode()).name(), head);
      case STROKE -> {
        behind(move.name(), head);
        hands.work(move.name());
      }
      case RESTING -> {
        tapped = move.name();
        behind(move.name(), head);
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
