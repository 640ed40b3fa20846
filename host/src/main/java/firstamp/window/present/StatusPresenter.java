package firstamp.window.present;

import firstamp.bench.Snapshot;
import firstamp.model.text.Worded;
import firstamp.window.present.BenchView.LinkView;
import firstamp.window.widgets.Tone;
import firstamp.window.words.Spoken;
import firstamp.window.words.Words;
import java.util.ArrayList;
import java.util.List;

/** Words for the state of cable, log and computer. */
final class StatusPresenter {
  private final Words words;

  StatusPresenter(Words words) {
    this.words = words;
  }

  /**
   * The states in the order in which they are shown.
   *
   * @param awake why the computer may go to sleep, null = nothing to say
   */
  List<LinkView> links(Snapshot now, Worded awake) {
    List<LinkView> links = new ArrayList<>();
    Snapshot.Link link = now.link();
    if (now.beside().neverAnswered()) {
      links.add(new LinkView(words.get("link.noAnswer"), link.port(), Tone.CAUTION));
      return links;
    }
    switch (link.state()) {
      case NONE -> {}
      case CONNECTING ->
          links.add(new LinkView(words.get("link.connecting"), link.text(), Tone.PLAIN));
      case GOOD -> links.add(good(link));
      case LOST -> links.add(new LinkView(words.get("link.lost"), link.text(), Tone.ALARM));
      case PROBE_RESTARTED ->
          links.add(new LinkView(words.get("link.restarted"), link.text(), Tone.ALARM));
    }
    if (now.kind() != Snapshot.Kind.REPLAY) {
      links.add(
          now.log().logging()
              ? new LinkView(words.get("log.good"), now.log().file(), Tone.PLAIN)
              : new LinkView(
                  words.get("log.bad"),
                  now.log().text(),
                  // Before the first reading and after the end nothing is written, rightly.
                  now.log().text() == null ? Tone.PLAIN : Tone.ALARM));
    }
    if (awake != null) {
      links.add(
          new LinkView(
              words.get("awake.bad"), new Spoken(words.locale()).say(awake), Tone.CAUTION));
    }
    return links;
  }

  private LinkView good(Snapshot.Link link) {
    if (link.lostConversions() > 0) {
      return new LinkView(
          words.get("link.holes", link.lostConversions()),
          words.get("link.holes.more"),
          Tone.CAUTION);
    }
    return new LinkView(
        words.get(link.reduced() ? "link.reduced" : "link.good"),
        link.reduced() ? words.get("link.reduced.more") : link.port(),
        Tone.PLAIN);
  }

  String phase(Snapshot now) {
    if (now.phase() == Snapshot.Phase.ENDED && now.times().closedMs() == null) {
      return words.get("phase.neverOn");
    }
    if (now.phase() == Snapshot.Phase.RAILS_FALLING && unproven(now)) {
      return words.get("phase.unproven");
    }
    return words.get("phase." + now.phase().name().toLowerCase(java.util.Locale.ROOT));
  }

  /** Whether the switch was opened and nothing has shown it yet. */
  static boolean unproven(Snapshot now) {
    return !now.times().openingSeen();
  }

  String about(Snapshot now) {
    List<String> parts = new ArrayList<>();
    if (now.powerUp() != null) {
      parts.add(words.get("about.powerUp", String.valueOf(now.powerUp())));
    }
    if (now.label() != null && !now.label().isBlank()) {
      parts.add("\u201c" + now.label() + "\u201d");
    }
    if (now.kind() == Snapshot.Kind.EMULATED) {
      parts.add(words.get("about.emulated"));
    }
    return String.join(", ", parts);
  }
}
