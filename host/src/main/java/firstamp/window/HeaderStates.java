package firstamp.window;

import firstamp.session.BenchMode;
import firstamp.session.Snapshot;
import firstamp.window.BenchView.LinkView;
import java.util.ArrayList;
import java.util.List;

/**
 * What the window itself adds to the states of cable and log: the mode, and whether it has keys.
 */
final class HeaderStates {
  private final Words words;
  private final ModePresenter modes;

  HeaderStates(Words words, ModePresenter modes) {
    this.words = words;
    this.modes = modes;
  }

  BenchView with(BenchView view, Snapshot now, BenchMode.State mode, boolean focused) {
    List<LinkView> links = new ArrayList<>();
    if (!focused && view.controls().off()) {
      links.add(new LinkView(words.get("focus.lost"), words.get("focus.lost.more"), Tone.CAUTION));
    }
    LinkView state = modes.state(now, mode);
    if (state != null) {
      links.add(state);
    }
    links.addAll(view.links());
    return view.withLinks(links);
  }
}
