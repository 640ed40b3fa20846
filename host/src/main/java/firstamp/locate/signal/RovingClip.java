package firstamp.locate.signal;

import firstamp.model.ClipInput;
import firstamp.model.ClipMove;
import firstamp.model.samples.LevelWindow;
import java.util.ArrayList;
import java.util.List;

/**
 * Takes levels from a clip that the person moves along the path while the set is on.
 *
 * <p>Fed with the moves and the level windows of a power-up in the order of the stream, live or
 * from the log; the same stream gives the same observations to the bit. The window that was being
 * collected when a move came is left out. Not thread-safe.
 */
public final class RovingClip {
  /** Uncertainty of a level that was read off another meter. Common practice, no source. */
  private static final double TYPED_DB = 1;

  private final SignalGraph graph;
  private final double headGainDb;
  private final double meterGainDb;
  private final List<Observation> taken = new ArrayList<>();
  private final List<LevelWindow> windows = new ArrayList<>();
  private final List<LevelWindow> quiet = new ArrayList<>();
  private final List<LevelWindow> touched = new ArrayList<>();
  private final List<Double> strokes = new ArrayList<>();
  private ClipMove held;
  private boolean touching;
  private boolean straddles;
  private SettledLevel last;

  /**
   * A clip that is not on anything.
   *
   * @param graph the path; only moves about its points and joints are understood
   * @param headGainDb standard uncertainty of the head input's calibration
   * @param meterGainDb the same of the meter input
   */
  public RovingClip(SignalGraph graph, double headGainDb, double meterGainDb) {
    this.headGainDb = headGainDb;
    this.meterGainDb = meterGainDb;
    this.graph = graph;
  }

  /** Takes a move; one that is about something else changes nothing. */
  public void move(ClipMove said) {
    if (!graph.knows(said)) {
      return;
    }
    ClipMove move = looking(said);
    if (move.act() == ClipMove.Act.TYPED) {
      end();
      taken.add(new Observation.Level(move.name(), move.mode(), null, move.levelDbv(), TYPED_DB));
      return;
    }
    straddles = true;
    switch (move.act()) {
      case HELD, RESTING -> begin(move);
      case STROKE -> stroke(move);
      case TOUCHED -> touching = true;
      case LEFT -> touching = false;
      case OFF -> end();
      case THERE, GONE -> {
        end();
        boolean there = move.act() == ClipMove.Act.THERE;
        taken.add(new Observation.Heard(move.name(), move.mode(), null, there));
      }
      case BACK -> {
        end();
        if (!taken.isEmpty()) {
          taken.remove(taken.size() - 1);
        }
      }
      case MENDED -> {
        end();
        taken.add(new Observation.Mended(move.name()));
      }
      default -> throw new IllegalStateException("no such act: " + move);
    }
  }

  /** The same with the input that looks, where nobody said which. */
  private ClipMove looking(ClipMove said) {
    boolean looks = said.roves() != null && said.roves();
    return looks && said.input() == null
        ? ClipMove.at(said.act(), said.name(), said.mode(), graph.inputOf(said))
        : said;
  }

  /** Takes a window of levels. */
  public void levels(LevelWindow window) {
    if (straddles) {
      straddles = false;
      return;
    }
    if (held == null) {
      return;
    }
    windows.add(window);
    if (held.act() == ClipMove.Act.RESTING) {
      (touching ? touched : quiet).add(window);
    }
    last = settled();
  }

  private void begin(ClipMove move) {
    end();
    held = move;
  }

  private void stroke(ClipMove move) {
    if (held != null && held.equals(move)) {
      keepStroke();
    } else {
      end();
      held = move;
    }
    windows.clear();
  }

  private void keepStroke() {
    if (!windows.isEmpty()) {
      strokes.add(SettledLevel.median(dbvs(windows)));
    }
  }

  private void end() {
    if (held != null) {
      switch (held.act()) {
        case HELD -> takeLevel();
        case STROKE -> takeStrokes();
        default -> takeTaps();
      }
    }
    held = null;
    touching = false;
    windows.clear();
    quiet.clear();
    touched.clear();
    strokes.clear();
  }

  private void takeLevel() {
    last = settled();
    if (last.levelDbv() != null) {
      taken.add(
          new Observation.Level(
              held.name(),
              held.mode(),
              null,
              last.levelDbv(),
              Math.max(0.01, last.uncertaintyDb()),
              last.state() == SettledLevel.State.AT_MOST));
    }
  }

  private void takeStrokes() {
    keepStroke();
    if (strokes.size() >= ContactRun.FEWEST) {
      taken.add(new Observation.Strokes(held.name(), strokes));
    }
  }

  private void takeTaps() {
    if (quiet.size() >= 2 && !touched.isEmpty()) {
      taken.add(new Observation.Taps(held.name(), dbvs(quiet), dbvs(touched)));
    }
  }

  private SettledLevel settled() {
    return SettledLevel.of(windows, held.input(), gainDb(held.input()));
  }

  private double gainDb(ClipInput input) {
    return input == ClipInput.HEAD ? headGainDb : meterGainDb;
  }

  private List<Double> dbvs(List<LevelWindow> some) {
    List<Double> levels = new ArrayList<>();
    for (LevelWindow window : some) {
      double volts = Math.max(held.input().volts(window), held.input().floorV(window));
      levels.add(SettledLevel.dbv(volts));
    }
    return levels;
  }

  /** Observations so far, in order. */
  public List<Observation> taken() {
    return List.copyOf(taken);
  }

  /** What is held now, null = nothing. */
  public ClipMove held() {
    return held;
  }

  /** Whether the joint that the clip rests behind is being tapped. */
  public boolean touching() {
    return touching;
  }

  /** The level of what is or was held last, null = none yet. */
  public SettledLevel last() {
    return last;
  }

  /** Levels of the windows of the present hold, dBV, for drawing. */
  public List<Double> course() {
    return held == null ? List.of() : dbvs(windows);
  }

  /** Strokes that are over, of the present run. */
  public int strokes() {
    return strokes.size();
  }
}
