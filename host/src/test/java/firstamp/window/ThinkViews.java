package firstamp.window;

import firstamp.app.TrialKeeping;
import firstamp.app.WindowOptions;
import firstamp.locate.Examples;
import firstamp.locate.signal.LocateSession;
import firstamp.locate.signal.Observation;
import firstamp.locate.signal.SettledLevel;
import firstamp.locate.wire.WireCase;
import firstamp.locate.wire.WireStep;
import firstamp.model.ClipInput;
import firstamp.model.ClipMove;
import firstamp.study.SearchState;
import firstamp.window.page.Page;
import firstamp.window.page.Tools;
import firstamp.window.search.LocatePage;
import firstamp.window.search.TrialPage;
import java.util.List;
import java.util.Map;

/** The views that help to think, on the worked examples. */
public final class ThinkViews {
  private ThinkViews() {}

  static void addTo(Map<String, Views.Maker> all) {
    for (int steps : new int[] {0, 2, 4, 5}) {
      all.put(
          "search-" + steps,
          options -> page(new LocatePage(tools(options), null, search(steps), null)));
    }
    all.put("search-live", options -> page(live(tools(options))));
    all.put(
        "search-tapping",
        options -> {
          ClipMove resting =
              ClipMove.at(
                  ClipMove.Act.RESTING,
                  "muting contact of the earphone jack",
                  null,
                  ClipInput.METER);
          SearchState state =
              new SearchState(search(4).search(), resting, null, List.of(-4.0, -4.1), 0, true);
          return page(new LocatePage(tools(options), new SearchingSession(state), null, null));
        });
    all.put(
        "search-template",
        options -> {
          LocateSession chain =
              Examples.search("record-chain")
                  .with(new Observation.Heard("head", null, null, false));
          return page(new LocatePage(tools(options), null, still(chain), null));
        });
    for (int steps : new int[] {4, 6, 7, 8, 10}) {
      all.put(
          "wires-" + steps,
          options ->
              page(new TrialPage(tools(options), wires("screened-lead", steps), KEEPING, null)));
    }
    all.put(
        "wires-radio",
        options -> page(new TrialPage(tools(options), wires("cotton-leads", 6), null, null)));
    all.put(
        "wires-table",
        options -> {
          TrialPage page = new TrialPage(tools(options), wires("cotton-leads", 6), KEEPING, null);
          page.choose(9);
          return page(page);
        });
  }

  static final TrialKeeping KEEPING =
      new TrialKeeping() {
        @Override
        public void keep(WireCase wires) {
          // Nothing is kept in a picture.
        }

        @Override
        public WireStep.Trial judge(WireCase wires, String wire, String place) {
          throw new UnsupportedOperationException();
        }

        @Override
        public long epochMs() {
          return 0;
        }
      };

  private static Tools tools(WindowOptions options) {
    return Views.tools(options, null);
  }

  private static Views.View page(Page page) {
    return Views.page(page);
  }

  static SearchState search(int steps) {
    LocateSession whole = Examples.search("silent-head");
    return still(
        new LocateSession(
            whole.graph(), whole.settings(), List.of(), whole.observations().subList(0, steps)));
  }

  private static SearchState still(LocateSession search) {
    return new SearchState(search, null, null, List.of(), 0);
  }

  private static LocatePage live(Tools tools) {
    SearchState held =
        new SearchState(
            search(2).search(),
            ClipMove.at(ClipMove.Act.HELD, "driver out", "record", ClipInput.METER),
            new SettledLevel(SettledLevel.State.TAKEN, -4.1, 0.3, 4),
            List.of(-4.1),
            0);
    return new LocatePage(tools, new SearchingSession(held), null, null);
  }

  public static WireCase wires(String name, int steps) {
    WireCase whole = Examples.wires(name);
    WireCase wires = whole.begin();
    for (WireStep step : whole.steps().subList(0, steps)) {
      wires = wires.with(step);
    }
    return wires;
  }
}
