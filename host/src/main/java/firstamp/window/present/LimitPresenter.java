package firstamp.window.present;

import firstamp.bench.Snapshot;
import firstamp.run.LimitMove;
import firstamp.window.present.BenchView.QuestionView;
import firstamp.window.words.Numbers;
import firstamp.window.words.Spoken;
import firstamp.window.words.Words;
import java.util.List;

/** Words about moved limits. */
public final class LimitPresenter {
  private final Words words;
  private final Numbers numbers;

  public LimitPresenter(Words words, Numbers numbers) {
    this.words = words;
    this.numbers = numbers;
  }

  /** Name of a limit. */
  String name(Snapshot now, LimitMove move) {
    return switch (move.kind()) {
      case RUNNING_A -> words.get("limit.running");
      case INRUSH_A -> words.get("limit.inrush");
      case SUPPLY_MAX_V -> words.get("limit.supply");
      case RAIL_OVER_V -> {
        var rail = now.sheet().rail(move.rail());
        yield words.get("limit.rail", rail == null ? "" : rail.name());
      }
    };
  }

  /** Name and value. */
  public String say(Snapshot now, LimitMove move) {
    return words.get(
        "limit.named", name(now, move), numbers.inUnit(move.value(), move.kind().unit()));
  }

  /** While it is being moved. */
  public String moving(Limit limit, double value, boolean byKeys) {
    return words.get(
        byKeys ? "limit.moving.keys" : "limit.moving",
        limit.name(),
        numbers.inUnit(value, limit.kind().unit()),
        numbers.inUnit(limit.value(), limit.kind().unit()));
  }

  /** Before it is made wider. */
  public QuestionView question(Snapshot now, LimitMove move) {
    return new QuestionView(
        OwnQuestions.Kind.WIDER.id(),
        words.get("limit.wider", say(now, move)),
        List.of(words.get("limit.wider.1"), words.get("limit.wider.2")),
        true,
        words.get("limit.wider.yes"),
        words.get("limit.wider.no"));
  }

  /** What became of it. */
  public String became(Snapshot now, Snapshot.Moved moved) {
    String what = say(now, moved.move());
    return switch (moved.state()) {
      case ASKED -> words.get("limit.asked", what);
      case TAKEN -> words.get("limit.taken", what);
      case NEXT_TIME -> words.get("limit.nextTime", what);
      case REFUSED -> words.get("limit.refused", what, new Spoken(words.locale()).say(moved.why()));
    };
  }
}
