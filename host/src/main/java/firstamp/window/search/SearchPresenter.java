package firstamp.window.search;

import firstamp.locate.odds.OddsWord;
import firstamp.locate.signal.LocateAnswer;
import firstamp.locate.signal.LocateSession;
import firstamp.locate.signal.Observation;
import firstamp.locate.signal.SettledLevel;
import firstamp.locate.signal.SignalGraph;
import firstamp.model.ClipInput;
import firstamp.model.ClipMove;
import firstamp.study.SearchState;
import firstamp.window.widgets.ChainLayout;
import firstamp.window.widgets.Tone;
import firstamp.window.words.Numbers;
import firstamp.window.words.Signs;
import firstamp.window.words.Words;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Turns a search for a lost signal into a view. */
public final class SearchPresenter {
  private static final int NAMED = 3;

  /** So far below what is expected a level counts as lost, dB. */
  private static final double LOST_DB = 6;

  private final Words words;
  private final Numbers numbers;

  public SearchPresenter(Words words, Numbers numbers) {
    this.words = words;
    this.numbers = numbers;
  }

  /**
   * A view.
   *
   * @param state of the search
   * @param wantedMode to draw when nothing is to be measured, null = the usual one
   */
  public SearchView view(SearchState state, String wantedMode) {
    LocateSession search = state.search();
    LocateAnswer answer = search.answer();
    String mode = mode(search.graph(), answer, wantedMode);
    ChainLayout layout = ChainLayout.of(search.graph(), mode);
    List<SearchView.Box> boxes = new ArrayList<>();
    Map<String, Integer> index = new HashMap<>();
    Map<String, Observation> found = found(search, mode);
    for (SignalGraph.PathPoint point : search.graph().points()) {
      ChainLayout.Cell cell = layout.places().get(point.name());
      if (cell != null) {
        index.put(point.name(), boxes.size());
        boxes.add(box(point, cell, mode, found.get(point.name()), answer));
      }
    }
    List<SearchView.Line> lines = lines(search.graph(), mode, index, answer);
    return new SearchView(
        tone(answer.state()),
        headline(answer),
        action(search.graph(), answer),
        boxes,
        lines,
        layout.columns(),
        layout.rows(),
        likely(answer),
        done(search, answer),
        hold(state),
        spoken(boxes));
  }

  private static String mode(SignalGraph graph, LocateAnswer answer, String wanted) {
    if (answer.next() != null) {
      return answer.next().mode();
    }
    return wanted != null ? wanted : graph.modes().get(0).name();
  }

  /** The latest observation of each point in a mode; what was before mending does not count. */
  private static Map<String, Observation> found(LocateSession search, String mode) {
    Map<String, Observation> found = new HashMap<>();
    for (Observation observation : search.observations()) {
      if (observation instanceof Observation.Mended) {
        found.clear();
      } else if (observation instanceof Observation.Level level
          && search.graph().mode(level.mode()).name().equals(mode)) {
        found.put(level.point(), level);
      } else if (observation instanceof Observation.Heard heard
          && search.graph().mode(heard.mode()).name().equals(mode)) {
        found.put(heard.point(), heard);
      }
    }
    return found;
  }

  private SearchView.Box box(
      SignalGraph.PathPoint point,
      ChainLayout.Cell cell,
      String mode,
      Observation found,
      LocateAnswer answer) {
    Double expected = point.expectedDbv(mode);
    boolean next = answer.next() != null && answer.next().point().equals(point.name());
    String level = expected == null ? "" : words.get("search.expected", dbv(expected));
    Tone tone = next ? Tone.ASK : Tone.PLAIN;
    if (found instanceof Observation.Heard heard) {
      level = words.get(heard.there() ? "search.there" : "search.gone");
      tone = next ? Tone.ASK : heard.there() ? Tone.CALM : Tone.ALARM;
    } else if (found instanceof Observation.Level measured) {
      String figure = dbv(measured.levelDbv());
      level = words.get(measured.atMost() ? "search.atMost" : "search.level", figure);
      boolean lost = expected != null && expected - measured.levelDbv() > LOST_DB;
      tone = next ? Tone.ASK : lost ? Tone.ALARM : Tone.CALM;
    }
    return new SearchView.Box(cell.column(), cell.row(), point.name(), level, found != null, tone);
  }

  private static List<SearchView.Line> lines(
      SignalGraph graph, String mode, Map<String, Integer> index, LocateAnswer answer) {
    List<SearchView.Line> lines = new ArrayList<>();
    for (SignalGraph.PathJoint joint : graph.joints()) {
      Integer from = index.get(joint.from());
      Integer to = index.get(joint.to());
      if (joint.carries(mode) && from != null && to != null) {
        lines.add(new SearchView.Line(from, to, joint.name(), suspect(answer, joint.name())));
      }
    }
    return lines;
  }

  private static boolean suspect(LocateAnswer answer, String joint) {
    return answer.odds().stream()
        .anyMatch(
            odds ->
                odds.joint().equals(joint)
                    && (odds.word() == OddsWord.MOST_LIKELY || odds.word() == OddsWord.LIKELY));
  }

  private static Tone tone(LocateAnswer.State state) {
    return switch (state) {
      case REFUSED -> Tone.ALARM;
      case MEASURE -> Tone.ASK;
      case FOUND, NOT_TOLD_APART -> Tone.CAUTION;
      case NOTHING_FOUND -> Tone.CALM;
    };
  }

  private String headline(LocateAnswer answer) {
    return switch (answer.state()) {
      case MEASURE -> words.get("search.next", answer.next().point());
      case FOUND -> words.get("search.found", answer.odds().get(0).joint());
      case REFUSED -> words.get("search.refused");
      case NOT_TOLD_APART -> words.get("search.notTold");
      case NOTHING_FOUND -> words.get("search.nothing");
    };
  }

  private String action(SignalGraph graph, LocateAnswer answer) {
    LocateAnswer.Next next = answer.next();
    if (next == null) {
      return Signs.in(answer.words().in(words.locale()));
    }
    List<String> parts = new ArrayList<>();
    if (graph.modes().size() > 1) {
      parts.add(words.get("search.switched", next.mode()));
    }
    parts.add(
        words.get(
            ClipInput.forLevel(next.expectedDbv()) == ClipInput.HEAD
                ? "search.headInput"
                : "search.meterInput"));
    if (next.expectedDbv() != null) {
      parts.add(words.get("search.expect", dbv(next.expectedDbv())));
    }
    String there = next.ifThere().isEmpty() ? words.get("search.none") : names(next.ifThere());
    return String.join(" ", parts) + " " + words.get("search.means", there, names(next.ifGone()));
  }

  private String names(List<String> joints) {
    return joints.isEmpty() ? words.get("search.none") : String.join("; ", joints);
  }

  private List<String> likely(LocateAnswer answer) {
    List<String> lines = new ArrayList<>();
    for (LocateAnswer.JointOdds odds : answer.odds()) {
      if (lines.size() < NAMED) {
        lines.add(odds.joint() + ": " + words.get("likely." + key(odds.word())));
      }
    }
    return lines;
  }

  public static String key(OddsWord word) {
    return switch (word) {
      case MOST_LIKELY -> "most";
      case LIKELY -> "likely";
      case LESS_LIKELY -> "less";
      case HARDLY -> "hardly";
      case STRUCK_OUT -> "struck";
    };
  }

  private List<String> done(LocateSession search, LocateAnswer answer) {
    List<String> done = new ArrayList<>();
    for (Observation observation : search.observations()) {
      done.add(observation.words().in(words.locale()));
    }
    Collections.reverse(done);
    List<String> remarks = new ArrayList<>();
    answer.remarks().forEach(each -> remarks.add(each.in(words.locale())));
    Collections.reverse(remarks);
    done.addAll(0, remarks);
    return done.stream().map(Signs::in).toList();
  }

  private String hold(SearchState state) {
    SettledLevel level = state.level();
    ClipMove held = state.held();
    if (held == null) {
      return level != null && level.levelDbv() == null ? trouble(level) : "";
    }
    if (held.act() == ClipMove.Act.STROKE) {
      return words.get("search.stroke", held.name(), state.strokes() + 1);
    }
    if (held.act() == ClipMove.Act.RESTING) {
      boolean rested = state.courseDbv().size() >= SearchHand.QUIET_WINDOWS;
      String key = state.touching() ? "tapping" : rested ? "rested" : "resting";
      return words.get("search." + key, held.name());
    }
    if (level == null || level.levelDbv() == null) {
      return level == null || level.state() == SettledLevel.State.TOO_SHORT
          ? words.get("search.holding", held.name())
          : trouble(level);
    }
    return words.get("search.holds", held.name(), dbv(level.levelDbv()));
  }

  private String dbv(double level) {
    return numbers.decibels(level, "dBV").toString();
  }

  private String trouble(SettledLevel level) {
    return switch (level.state()) {
      case NOT_STILL -> words.get("search.notStill");
      case TOO_HIGH -> words.get("search.tooHigh");
      default -> words.get("search.tooShort");
    };
  }

  private static String spoken(List<SearchView.Box> boxes) {
    StringBuilder text = new StringBuilder();
    for (SearchView.Box box : boxes) {
      text.append(text.isEmpty() ? "" : "; ").append(box.name());
      text.append(box.level().isEmpty() ? "" : " " + box.level());
    }
    return text.toString();
  }
}
