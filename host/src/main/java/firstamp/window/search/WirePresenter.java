package firstamp.window.search;

import firstamp.locate.odds.OddsWord;
import firstamp.locate.wire.LandingPlace;
import firstamp.locate.wire.LooseWire;
import firstamp.locate.wire.WireAnswer;
import firstamp.locate.wire.WireCase;
import firstamp.locate.wire.WireStep;
import firstamp.locate.wire.WireWords;
import firstamp.window.widgets.Tone;
import firstamp.window.words.Numbers;
import firstamp.window.words.Signs;
import firstamp.window.words.Words;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Turns wires of unknown place into a view of one of them. */
public final class WirePresenter {
  public static final int FIRST_PLACES = 3;

  private final Words words;
  private final WireWords sentences;
  private final Numbers numbers;

  public WirePresenter(Words words, Numbers numbers) {
    this.words = words;
    this.sentences = new WireWords(words.locale());
    this.numbers = numbers;
  }

  /**
   * A view of one wire.
   *
   * @param wires all of them
   * @param index of the one that is shown
   */
  public WireView view(WireCase wires, int index) {
    LooseWire wire = wires.wires().get(index);
    WireAnswer answer = wires.answer(wire.name(), sentences);
    List<WireView.PlaceView> places = new ArrayList<>();
    List<List<String>> table = new ArrayList<>();
    for (WireAnswer.PlaceOdds odds : answer.places()) {
      WireView.PlaceView place = place(wires, odds, answer);
      if (places.size() < FIRST_PLACES) {
        places.add(place);
      }
      table.add(
          List.of(
              odds.place(),
              words.get("place." + wires.place(odds.place()).kind().id()),
              place.likely(),
              ifWrong(wires.place(odds.place()), odds),
              place.reason()));
    }
    return new WireView(
        tone(answer.state()),
        words.get("wires.title", wire.name(), index + 1, wires.wires().size()),
        headline(answer),
        Signs.in(answer.sentence()),
        answer.warnings().stream().map(Signs::in).toList(),
        places,
        about(wire),
        done(wires, wire.name()),
        table);
  }

  private WireView.PlaceView place(WireCase wires, WireAnswer.PlaceOdds odds, WireAnswer answer) {
    LandingPlace place = wires.place(odds.place());
    boolean next = answer.next() != null && answer.next().place().equals(odds.place());
    boolean struck = odds.word() == OddsWord.STRUCK_OUT;
    return new WireView.PlaceView(
        odds.place(),
        words.get("likely." + SearchPresenter.key(odds.word())),
        place.ifWrong() == null
            ? ifWrong(place, odds)
            : words.get("wires.ifWrong", place.ifWrong()),
        odds.reason() == null ? "" : Signs.in(odds.reason()),
        struck ? Tone.ALARM : next ? Tone.ASK : Tone.PLAIN);
  }

  private String ifWrong(LandingPlace place, WireAnswer.PlaceOdds odds) {
    return place.ifWrong() == null ? words.get("harm." + odds.harm()) : place.ifWrong();
  }

  private static Tone tone(WireAnswer.State state) {
    return switch (state) {
      case FIND_SHORT, MEASURE_AGAIN -> Tone.ALARM;
      case CHECK_COLD, SOURCE_TEST, TRY -> Tone.ASK;
      case FITS, NO_PLACE_LEFT -> Tone.CAUTION;
      case BELONGS -> Tone.CALM;
    };
  }

  private String headline(WireAnswer answer) {
    String best = answer.places().stream().map(WireAnswer.PlaceOdds::place).findFirst().orElse("");
    return switch (answer.state()) {
      case MEASURE_AGAIN -> words.get("wires.measureAgain");
      case FIND_SHORT ->
          answer.found().place() == null
              ? words.get("wires.findShortWire")
              : words.get("wires.findShort", answer.found().place());
      case CHECK_COLD -> words.get("wires.checkCold");
      case SOURCE_TEST -> words.get("wires.sourceTest");
      case TRY -> words.get("wires.try", answer.next().place());
      case FITS -> words.get("wires.fits", likeliest(answer, best));
      case BELONGS -> words.get("wires.belongs", likeliest(answer, best));
      case NO_PLACE_LEFT -> words.get("wires.noPlace");
    };
  }

  private static String likeliest(WireAnswer answer, String otherwise) {
    return answer.places().stream()
        .max(java.util.Comparator.comparingDouble(WireAnswer.PlaceOdds::share))
        .map(WireAnswer.PlaceOdds::place)
        .orElse(otherwise);
  }

  /** Build and reach say much, the colour little: it comes last. */
  private String about(LooseWire wire) {
    List<String> parts = new ArrayList<>();
    if (wire.build() != null) {
      parts.add(wire.build());
    }
    if (wire.reachMm() != null) {
      parts.add(words.get("wires.reach", numbers.fixed(wire.reachMm(), 0)));
    }
    if (wire.foundAt() != null) {
      parts.add(wire.foundAt());
    }
    if (wire.colour() != null) {
      parts.add(words.get("wires.colour", wire.colour()));
    }
    return String.join(", ", parts);
  }

  /** A step in words. */
  public String step(WireStep step) {
    return Signs.in(sentences.step(step));
  }

  private List<String> done(WireCase wires, String wire) {
    List<String> done = new ArrayList<>();
    for (WireStep step : wires.steps()) {
      if (step.concerns(wire)) {
        done.add(Signs.in(sentences.step(step)));
      }
    }
    Collections.reverse(done);
    return done;
  }
}
