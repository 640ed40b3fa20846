package firstamp.window.present;

import firstamp.bench.Snapshot;
import firstamp.model.JobSheet;
import firstamp.run.questions.Asking;
import firstamp.run.questions.OpenQuestion;
import firstamp.window.present.BenchView.QuestionView;
import firstamp.window.words.Spoken;
import firstamp.window.words.Words;
import java.util.ArrayList;
import java.util.List;

/** Words of the questions that are asked before the switch may close, and of the cautions. */
final class QuestionPresenter {
  private static final List<String> KNOWN =
      List.of(
          "cautions",
          "cautions-short",
          "floating-supply",
          "hook-up",
          "above-60",
          "no-fuse",
          "tape-out",
          "speaker-off",
          Asking.HANDS_OUT);
  private static final List<String> TICKED = List.of("floating-supply", "hook-up");

  /** Known by name, but what it is about has to be told. */
  private static final String NOT_LOGGING = "not-logging";

  private final Words words;
  private final Spoken spoken;

  QuestionPresenter(Words words) {
    this.words = words;
    this.spoken = new Spoken(words.locale());
  }

  List<QuestionView> questions(Snapshot now) {
    List<QuestionView> views = new ArrayList<>();
    for (OpenQuestion question : now.questions()) {
      views.add(view(question, now.sheet()));
    }
    return views;
  }

  QuestionView view(OpenQuestion question, JobSheet sheet) {
    String id = question.id();
    if (id.equals("soak")) {
      return ModePresenter.question(words, id);
    }
    if (id.equals(NOT_LOGGING)) {
      return new QuestionView(
          id,
          words.get("question.not-logging"),
          List.of(spoken.say(question.text()), words.get("question.not-logging.1")),
          false,
          words.get("question.not-logging.yes"),
          words.get("question.not-logging.no"));
    }
    if (!KNOWN.contains(id)) {
      return new QuestionView(
          id,
          words.get("question.other"),
          List.of(question.text() == null ? id : spoken.say(question.text())),
          false,
          words.get("question.yes"),
          words.get("question.no"));
    }
    boolean short2 = id.equals("cautions-short");
    return new QuestionView(
        id,
        words.get("question." + id),
        short2 ? concerning(sheet) : lines(sheet, id),
        TICKED.contains(id),
        words.get("question." + id + ".yes"),
        words.get("question." + id + ".no"));
  }

  /** Where the set runs on batteries nothing is asked about others. */
  private List<String> lines(JobSheet sheet, String id) {
    List<String> lines = lines("question." + id);
    boolean battery = sheet.supply() != null && "battery".equals(sheet.supply().kind());
    lines.removeIf(line -> battery && line.equals(words.get("question.hook-up.2")));
    return lines;
  }

  /** Lines key.1, key.2 ... as far as there are any. */
  private List<String> lines(String key) {
    List<String> lines = new ArrayList<>();
    for (int number = 1; words.has(key + "." + number); number++) {
      lines.add(words.get(key + "." + number));
    }
    return lines;
  }

  /** The two lines of caution that concern this set. */
  List<String> concerning(JobSheet sheet) {
    JobSheet.Supply supply = sheet.supply();
    boolean mains = supply != null && "mains-transformer".equals(supply.kind());
    boolean battery = supply != null && "battery".equals(supply.kind());
    return List.of(
        words.get(mains ? "caution.mains" : battery ? "caution.battery" : "caution.bench"),
        words.get("caution.charge"));
  }
}
