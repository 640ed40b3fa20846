package firstamp.window.present;

import firstamp.run.questions.Asking;
import firstamp.window.widgets.Tone;
import java.util.List;

/**
 * Everything the window says at one moment, in words; made by {@link BenchPresenter}, free of
 * Swing.
 *
 * @param title of the window and of the task bar
 * @param set name of the set
 * @param about label and number of the power-up, and whether it is emulated or a replay
 * @param phase in a word or two
 * @param elapsed time since the switch closed
 * @param sentence what matters most now
 * @param folded further alarms, one line each, to be shown on demand
 * @param figures the row of large figures
 * @param links cable, log and the like
 * @param questions that wait, empty = none
 * @param controls which controls can be used
 * @param replay time bar of a replay, null when live
 * @param trip picture of the trip, null = none
 * @param closing two lines of caution that concern this set
 */
public record BenchView(
    String title,
    String set,
    String about,
    String phase,
    String elapsed,
    Sentence sentence,
    List<String> folded,
    List<FigureView> figures,
    List<LinkView> links,
    List<QuestionView> questions,
    Controls controls,
    ReplayView replay,
    TripPicture trip,
    String closing) {

  /** Where there is a switch but no power-up: a sentence, and OFF. */
  public static BenchView plain(String title, String phase, Sentence sentence, String offWords) {
    return new BenchView(
        title,
        "",
        "",
        phase,
        "",
        sentence,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        new Controls(true, offWords, false, false, null),
        null,
        null,
        "");
  }

  /** The same with other states of cable and log. */
  public BenchView withLinks(List<LinkView> others) {
    return new BenchView(
        title, set, about, phase, elapsed, sentence, folded, figures, others, questions, controls,
        replay, trip, closing);
  }

  /**
   * The one thing to read first.
   *
   * @param tone how urgent
   * @param headline cause and figure
   * @param action what to do first, or what comes next
   */
  public record Sentence(Tone tone, String headline, String action) {}

  /**
   * One large figure.
   *
   * @param name of the quantity
   * @param number as written, a dash when it cannot be measured
   * @param unit of the number
   * @param word rising, steady, falling; low, high; or why there is no figure
   * @param more a second line, may be empty
   * @param tone state
   */
  public record FigureView(
      String name, String number, String unit, String word, String more, Tone tone) {
    /** The whole as one spoken line. */
    public String spoken() {
      return (name + " " + number + " " + unit + ", " + word + (more.isEmpty() ? "" : ", " + more))
          .replaceAll(" +", " ")
          .replace(" ,", ",");
    }
  }

  /**
   * State of the cable, the log, the computer.
   *
   * @param text a few words
   * @param detail the whole sentence, null = nothing to add
   * @param tone state
   */
  public record LinkView(String text, String detail, Tone tone) {}

  /**
   * A question.
   *
   * @param id to answer with
   * @param title of the card
   * @param lines what is to be looked at, each to be ticked when {@code tick}
   * @param tick whether every line must be ticked before it can be confirmed
   * @param yes words on the control that goes on
   * @param no words on the control that does not
   */
  public record QuestionView(
      String id, String title, List<String> lines, boolean tick, String yes, String no) {
    /**
     * Whether its yes switches on: then it has to be held, and neither Enter nor a click says it.
     */
    public boolean held() {
      return id.equals(Asking.HANDS_OUT);
    }
  }

  /**
   * Which controls can be used.
   *
   * @param off OFF opens something
   * @param offWords words under OFF
   * @param mark a mark can be put
   * @param seen an alarm waits to be seen
   * @param restore number of the trip after which the switch can be closed again, null = cannot
   */
  public record Controls(
      boolean off, String offWords, boolean mark, boolean seen, Integer restore) {}

  /**
   * Time bar of a replay.
   *
   * @param fromMs course time of the left end
   * @param toMs course time of the right end
   * @param atMs position
   * @param zeroMs course time of the closing
   * @param held whether it holds
   * @param speed factor
   * @param position in words
   * @param events on the bar
   */
  public record ReplayView(
      double fromMs,
      double toMs,
      double atMs,
      double zeroMs,
      boolean held,
      double speed,
      String position,
      List<EventMark> events) {}

  /**
   * Something with a time.
   *
   * @param ms course time
   * @param text in words
   * @param tone state
   */
  public record EventMark(double ms, String text, Tone tone) {}

  /**
   * The current around a trip.
   *
   * @param sentence above it
   * @param zero what happened at time zero
   * @param fromMs left edge
   * @param toMs right edge
   * @param stepMs from value to value
   * @param firstMs time of the first value
   * @param amps values
   * @param limitA limit, null = none in ampere
   * @param offMs when the switch was open, null = not known
   */
  public record TripPicture(
      String sentence,
      TripZero zero,
      double fromMs,
      double toMs,
      double stepMs,
      double firstMs,
      List<Float> amps,
      Double limitA,
      Double offMs) {}

  /** What a trip's time zero is. */
  public enum TripZero {
    /** The limit was crossed. */
    CROSSED("crossed"),
    /** The current was over the limit before, when another one acted: this one began to act. */
    BEGINS("begins"),
    /** No limit was crossed: the switch opened. */
    OPEN("open");

    private final String key;

    TripZero(String key) {
      this.key = key;
    }

    /** End of its words' keys. */
    public String key() {
      return key;
    }
  }
}
