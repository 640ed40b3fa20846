package firstamp.study;

import firstamp.analysis.statistics.Uncertainty;
import firstamp.locate.SheetPath;
import firstamp.locate.signal.LocateSession;
import firstamp.locate.signal.Observation;
import firstamp.locate.signal.RovingClip;
import firstamp.locate.signal.SignalGraph;
import firstamp.log.LogException;
import firstamp.log.PowerUpReader;
import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.ClipMove;
import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.model.ProbeHello;
import firstamp.model.samples.Channel;
import firstamp.model.samples.LevelWindow;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ForwardingChainListener;
import firstamp.sheet.Defaults;
import firstamp.sheet.SheetException;
import firstamp.sheet.SheetReader;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Follows a search for a lost signal through a power-up, live or replayed: the moves of the clip
 * say what is held, the level windows what is there, the alarms whether a rail is out of order.
 *
 * <p>Fed on the session thread; {@link #state()} may be called from any thread.
 */
public final class SignalSearch implements ChainListener {
  private static final Set<String> RAIL_RULES =
      Set.of(
          "rail-window",
          "rail-late",
          "rail-unsteady",
          "rail-not-following",
          "ripple",
          "ripple-too-low",
          "over-voltage",
          "wrong-polarity");

  private static final double DB_PER_SHARE = 20 / StrictMath.log(10);

  private final LocateSession start;
  private final Map<Integer, String> standing = new LinkedHashMap<>();
  private volatile List<Observation> earlier = List.of();
  private RovingClip clip;
  private volatile SearchState state;

  /** A search along a path, nothing measured yet. */
  public SignalSearch(SignalGraph graph) {
    this.start = LocateSession.start(graph);
    this.clip = new RovingClip(graph, blankDb(), blankDb());
    publish();
  }

  /** A search along the path of a sheet; null if it names none. */
  public static SignalSearch of(JobSheet sheet) {
    return SheetPath.hasPath(sheet) ? new SignalSearch(SheetPath.graph(sheet)) : null;
  }

  /**
   * What was searched in a logged power-up; null if its sheet names no path.
   *
   * @throws LogException it cannot be read
   * @throws SheetException the stored sheet is none
   */
  public static SearchState of(PowerUpReader reader) throws LogException, SheetException {
    JobSheet sheet = sheet(reader);
    return SheetPath.hasPath(sheet) ? of(reader, sheet, SheetPath.graph(sheet)) : null;
  }

  /**
   * What was searched in a logged power-up along a path.
   *
   * @throws LogException it cannot be read
   * @throws SheetException the stored sheet is none
   */
  public static SearchState of(PowerUpReader reader, SignalGraph graph)
      throws LogException, SheetException {
    return of(reader, sheet(reader), graph);
  }

  private static SearchState of(PowerUpReader reader, JobSheet sheet, SignalGraph graph)
      throws LogException {
    SignalSearch search = new SignalSearch(graph);
    new ReplayPowerUp(reader, sheet, search, micros -> true).run();
    return search.state();
  }

  private static JobSheet sheet(PowerUpReader reader) throws LogException, SheetException {
    String name = "stored sheet of power-up " + reader.entry().number();
    return Defaults.refill(SheetReader.parse(name, reader.header().effectiveSheetJson()).sheet());
  }

  private static double blankDb() {
    return DB_PER_SHARE * firstamp.model.samples.Calibration.BLANK_GAIN_UNCERTAINTY;
  }

  @Override
  public void probe(ProbeHello hello) {
    Uncertainty uncertainty = new Uncertainty(hello.calibration());
    clip =
        new RovingClip(
            start.graph(),
            DB_PER_SHARE * uncertainty.gain(Channel.H),
            DB_PER_SHARE * uncertainty.gain(Channel.M));
    publish();
  }

  @Override
  public void alarm(Alarm alarm) {
    if (!RAIL_RULES.contains(alarm.rule())) {
      return;
    }
    boolean stands =
        alarm.state() == AlarmState.UNACKNOWLEDGED || alarm.state() == AlarmState.ACKNOWLEDGED;
    if (stands) {
      standing.put(alarm.number(), alarm.text());
    } else {
      standing.remove(alarm.number());
    }
    publish();
  }

  @Override
  public void happened(Happening what, double atMs) {
    if (what instanceof ClipMove move) {
      clip.move(move);
      publish();
    }
  }

  @Override
  public void levels(LevelWindow window) {
    clip.levels(window);
    publish();
  }

  /**
   * Carries on a search along the same path: the clip is moved while the set is off, so that each
   * point has a power-up of its own. To be called before anything else.
   */
  public void carryOn(SearchState before) {
    if (before != null && before.search().graph().equals(start.graph())) {
      earlier = before.search().observations();
      publish();
    }
  }

  private void publish() {
    List<Observation> all = new ArrayList<>(earlier);
    all.addAll(clip.taken());
    LocateSession search =
        new LocateSession(start.graph(), start.settings(), List.copyOf(standing.values()), all);
    state =
        new SearchState(
            search, clip.held(), clip.last(), clip.course(), clip.strokes(), clip.touching());
  }

  /** A listener that tells the search first and then another one. */
  public ChainListener before(ChainListener next) {
    return new ForwardingChainListener(next) {
      @Override
      public void probe(ProbeHello hello) {
        SignalSearch.this.probe(hello);
        super.probe(hello);
      }

      @Override
      public void alarm(Alarm alarm) {
        SignalSearch.this.alarm(alarm);
        super.alarm(alarm);
      }

      @Override
      public void happened(Happening what, double atMs) {
        SignalSearch.this.happened(what, atMs);
        super.happened(what, atMs);
      }

      @Override
      public void levels(LevelWindow window) {
        SignalSearch.this.levels(window);
        super.levels(window);
      }
    };
  }

  /** Where it stands now. */
  public SearchState state() {
    return state;
  }
}
