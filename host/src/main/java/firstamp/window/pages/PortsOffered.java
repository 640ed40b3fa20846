package firstamp.window.pages;

import firstamp.app.Desk;
import firstamp.app.DeskSettings;
import firstamp.app.Ports;
import firstamp.window.words.Spoken;
import firstamp.window.words.Words;
import java.util.ArrayList;
import java.util.List;

/**
 * The ports that are offered: those of this computer, usable ones first, and one that was typed by
 * hand if a probe box has answered on it.
 *
 * @param found ports that this computer names
 * @param kept what the window remembers
 */
record PortsOffered(List<Ports.Found> found, DeskSettings kept) {
  PortsOffered {
    found = List.copyOf(found);
  }

  /** Touches the ports and the disk. */
  static PortsOffered of(Desk desk) {
    return new PortsOffered(desk.ports().list(), desk.settings());
  }

  List<String> paths() {
    List<String> paths = new ArrayList<>();
    found.stream().filter(Ports.Found::usable).forEach(each -> paths.add(each.path()));
    found.stream().filter(each -> !each.usable()).forEach(each -> paths.add(each.path()));
    boolean unnamed = kept.port() != null && !paths.contains(kept.port());
    if (unnamed && (Boolean.TRUE.equals(kept.portTyped()) || paths.isEmpty())) {
      paths.add(kept.port());
    }
    return paths;
  }

  /** The one of the last time where it is offered, else the first; null = there is none. */
  String first() {
    List<String> paths = paths();
    return paths.contains(kept.port()) ? kept.port() : paths.isEmpty() ? null : paths.get(0);
  }

  /** What there is to say of a port that is chosen or typed. */
  String about(Words words, String path) {
    return found.stream()
        .filter(each -> each.path().equals(path))
        .findFirst()
        .map(
            each -> each.usable() ? each.description() : new Spoken(words.locale()).say(each.why()))
        .orElseGet(
            () ->
                words.get(
                    path.isEmpty()
                        ? "ready.noPort"
                        : path.equals(kept.port()) ? "ready.knownPort" : "ready.typedPort"));
  }
}
