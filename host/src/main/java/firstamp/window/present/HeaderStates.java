package firstamp.window.present;

import firstamp.app.Hearing;
import firstamp.bench.Snapshot;
import firstamp.run.BenchMode;
import firstamp.window.present.BenchView.LinkView;
import firstamp.window.widgets.Tone;
import firstamp.window.words.Words;
import java.util.ArrayList;
import java.util.List;

/**
 * What the window itself adds to the states of cable and log: whether it has the keys, the mode,
 * and that nothing is heard.
 */
public final class HeaderStates {
  private final Words words;
  private final ModePresenter modes;

  public HeaderStates(Words words, ModePresenter modes) {
    this.words = words;
    this.modes = modes;
  }

  public BenchView with(
      BenchView view, Snapshot now, BenchMode.State mode, Hearing.State heard, boolean focused) {
    List<LinkView> links = new ArrayList<>();
    if (!focused && view.controls().off()) {
      links.add(new LinkView(words.get("focus.lost"), words.get("focus.lost.more"), Tone.CAUTION));
    }
    LinkView state = modes.state(now, mode);
    if (state != null) {
      links.add(state);
    }
    LinkView sound = sound(heard);
    if (sound != null && now.kind() != Snapshot.Kind.REPLAY) {
      links.add(sound);
    }
    links.addAll(view.links());
    return view.withLinks(links);
  }

  private LinkView sound(Hearing.State heard) {
    return switch (heard) {
      case NOTHING, HEARD -> null;
      case MUTED ->
          new LinkView(words.get("sound.muted"), words.get("sound.muted.more"), Tone.CAUTION);
      case NOT_WANTED ->
          new LinkView(words.get("sound.notWanted"), words.get("sound.notWanted.more"), Tone.PLAIN);
      case NO_DEVICE ->
          new LinkView(words.get("sound.none"), words.get("sound.none.more"), Tone.CAUTION);
    };
  }
}
