package firstamp.window.watch;

import firstamp.bench.Snapshot;
import firstamp.window.present.LiveSet;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.util.stream.Stream;

/**
 * Whether ohms may be measured: never into a set that is fed, nor while something in it still has
 * volts. Says why not.
 */
public final class OhmGuard {
  /** More than this on a rail spoils the reading, and the meter. */
  static final double MOST_VOLTS = 1.0;

  private final Words words;
  private final Numbers numbers;

  public OhmGuard(Words words, Numbers numbers) {
    this.words = words;
    this.numbers = numbers;
  }

  /** Why not; null = they may be measured as far as is known. */
  public String refusal(Snapshot now) {
    if (now == null || now.kind() == Snapshot.Kind.REPLAY) {
      return null;
    }
    if (now.phase() == Snapshot.Phase.CHECK
        || now.phase() == Snapshot.Phase.LOOK
        || now.phase() == Snapshot.Phase.ON) {
      return words.get("ohms.on");
    }
    String charged = charged(now);
    if (charged != null) {
      return charged;
    }
    if (LiveSet.Stand.closable(now.phase())) {
      return words.get("ohms.mayClose");
    }
    return battery(now) ? words.get("ohms.battery") : null;
  }

  private String charged(Snapshot now) {
    boolean before = LiveSet.Stand.closable(now.phase());
    boolean over = now.phase() == Snapshot.Phase.ENDED;
    String key = before ? "ohms.fed" : over ? "ohms.wasUp" : "ohms.up";
    return highest(now)
        .filter(seen -> Math.abs(seen.volts()) > MOST_VOLTS)
        .findFirst()
        .map(seen -> words.get(key, seen.name(), numbers.inUnit(seen.volts(), "V")))
        .orElse(null);
  }

  private record Seen(String name, double volts) {}

  private Stream<Seen> highest(Snapshot now) {
    Stream<Seen> rails =
        now.figures().rails().stream()
            .filter(rail -> rail.volts() != null)
            .map(rail -> new Seen(rail.name(), rail.volts()));
    return now.figures().supplyV() == null
        ? rails
        : Stream.concat(
            rails, Stream.of(new Seen(words.get("figure.volts"), now.figures().supplyV())));
  }

  /** A battery feeds it, and nobody has said that it is out. */
  private static boolean battery(Snapshot now) {
    return now.phase() != Snapshot.Phase.ENDED
        && now.sheet().supply() != null
        && "battery".equals(now.sheet().supply().kind());
  }
}
