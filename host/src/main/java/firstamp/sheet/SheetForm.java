package firstamp.sheet;

import firstamp.model.JobSheet;
import firstamp.model.text.Worded;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A job sheet in the making: answers so far, what is suggested for the rest, and what an unknown
 * answer means for the watch. Shared by everything that asks (terminal, options, window); knows no
 * display.
 *
 * <p>Immutable: {@link #answered} gives a new form.
 */
public final class SheetForm {
  /** The answer for what is not known; on a command line "?" does as well. */
  public static final String UNKNOWN = "don't know";

  private static final double STARTING_V = 6;
  private static final double BENCH_FED_V = 30;

  private final Map<SheetQuestion, String> answers;

  private SheetForm(Map<SheetQuestion, String> answers) {
    this.answers = Collections.unmodifiableMap(answers);
  }

  /** Nothing answered yet. */
  public static SheetForm empty() {
    return new SheetForm(new EnumMap<>(SheetQuestion.class));
  }

  /** Whether this counts as "don't know". */
  public static boolean meansUnknown(String answer) {
    String word = answer.trim().toLowerCase(Locale.ROOT).replace('\u2019', '\'');
    return List.of("?", UNKNOWN, "dont know", "unknown").contains(word);
  }

  /**
   * The form with one more answer; an earlier one to the same question is replaced.
   *
   * @throws AnswerRefused it cannot be taken; says what can
   */
  public SheetForm answered(SheetQuestion question, String answer) throws AnswerRefused {
    Map<SheetQuestion, String> next = new EnumMap<>(SheetQuestion.class);
    next.putAll(answers);
    next.put(question, meansUnknown(answer) ? UNKNOWN : AnswerCheck.taken(question, answer.trim()));
    return new SheetForm(next);
  }

  /** Whether there is an answer, "don't know" included. */
  public boolean isAnswered(SheetQuestion question) {
    return answers.containsKey(question);
  }

  /** The answer as taken (numbers in the question's unit); null = none, or not known. */
  public String answer(SheetQuestion question) {
    String answer = answers.get(question);
    return UNKNOWN.equals(answer) ? null : answer;
  }

  /** Those always asked that are not answered yet, in their order. */
  public List<SheetQuestion> stillToAsk() {
    return open(true);
  }

  /** Further questions that concern this set, the most useful first. */
  public List<SheetQuestion> alsoUseful() {
    List<SheetQuestion> useful = new ArrayList<>(open(false));
    boolean mains = "mains-transformer".equals(supplyKind());
    if (!mains) {
      useful.remove(SheetQuestion.PLACE);
      useful.remove(SheetQuestion.VALVE_RECTIFIER);
    }
    if (!"bench".equals(feed()) && !"reservoir-fed".equals(place())) {
      useful.remove(SheetQuestion.SUPPLY_LIMIT);
    }
    return useful;
  }

  private List<SheetQuestion> open(boolean first) {
    List<SheetQuestion> open = new ArrayList<>();
    for (SheetQuestion question : SheetQuestion.values()) {
      if (question.first() == first && !isAnswered(question)) {
        open.add(question);
      }
    }
    return open;
  }

  /**
   * What is suggested for a question.
   *
   * @param answer as it would be taken
   * @param why in words
   */
  public record Suggestion(String answer, Worded why) {}

  /** What is taken while the question is not answered; null = nothing is. */
  public Suggestion suggestion(SheetQuestion question) {
    return switch (question) {
      case KIND -> suggest(SetKinds.of(answer(SheetQuestion.WHAT)), "why.kind");
      case VOLTS -> suggest(Double.toString(STARTING_V), "why.volts");
      case PLACE -> {
        if (!"mains-transformer".equals(supplyKind())) {
          yield suggest("supply-lead", "why.place.lead");
        }
        boolean low = volts() <= BENCH_FED_V;
        yield suggest(
            low ? "reservoir-fed" : "before-reservoir", low ? "why.place" : "why.place.high");
      }
      case MOTOR -> "recorder".equals(kind()) ? suggest("yes", "why.motor") : null;
      default -> null;
    };
  }

  private static Suggestion suggest(String answer, String why) {
    return answer == null ? null : new Suggestion(answer, SheetQuestion.word(why));
  }

  /**
   * What is not known, and what will not be watched for that reason, one sentence each; empty =
   * nothing.
   */
  public List<Worded> costs() {
    List<Worded> costs = new ArrayList<>();
    if (RunningLimit.of(sheet()).loose()) {
      costs.add(SheetQuestion.word("limits.loose"));
    }
    for (SheetQuestion question : SheetQuestion.values()) {
      Worded cost = cost(question);
      if (cost != null) {
        costs.add(cost);
      }
    }
    return costs;
  }

  /**
   * What will not be watched because this is not known; null = it is known, or makes no difference
   * here.
   */
  public Worded cost(SheetQuestion question) {
    if (answer(question) != null) {
      return null;
    }
    boolean asked = question.first() || alsoUseful().contains(question) || isAnswered(question);
    boolean suggested = !question.first() && suggestion(question) != null;
    // A known idle current makes the label useless, and a motor is in it. Where the running limit
    // is a guess, one sentence says so instead.
    boolean better =
        question == SheetQuestion.LABEL && answer(SheetQuestion.IDLE) != null
            || !RunningLimit.of(sheet()).fromTheSet()
                && (question == SheetQuestion.LABEL
                    || question == SheetQuestion.IDLE
                    || question == SheetQuestion.MOTOR);
    return !asked || suggested || better ? null : question.costWords();
  }

  /**
   * A limit or setting that follows from the answers.
   *
   * @param field of the sheet, or empty for a setting of the bench supply
   * @param value in the unit
   * @param unit of the value
   * @param why in words
   */
  public record Limit(String field, double value, String unit, Worded why) {}

  /** The limits that will act, and how to set a bench supply, each with its reason. */
  public List<Limit> suggestedLimits() {
    JobSheet sheet = sheet();
    JobSheet.Limits limits = limits();
    KnownCurrent known = KnownCurrent.of(sheet);
    List<Limit> list = new ArrayList<>();
    String why = "why.runningA." + RunningLimit.of(sheet).why();
    add(list, "limits.runningA", limits.runningA(), "A", why);
    add(list, "limits.inrushA", limits.inrushA(), "A", "why.inrushA");
    add(list, "limits.inrushMs", limits.inrushMs(), "ms", "why.inrushMs");
    add(list, "limits.i2tA2s", limits.i2tA2s(), "A2s", "why.i2tA2s");
    if ("bench".equals(feed()) || "reservoir-fed".equals(place())) {
      boolean nothing = known.from() == KnownCurrent.From.NOTHING;
      add(list, "", number(SheetQuestion.SUPPLY_LIMIT), "A", "why.supplySaid");
      add(list, "", known.firstA(), "A", nothing ? "why.supplyFirst.NOTHING" : "why.supplyFirst");
      add(list, "", known.nominalA(), "A", "why.supplyNominal");
    }
    return list;
  }

  private static void add(
      List<Limit> list, String field, Double value, String unit, String whyKey) {
    if (value != null) {
      list.add(new Limit(field, value, unit, SheetQuestion.word(whyKey)));
    }
  }

  private JobSheet.Limits limits() {
    return Defaults.fill(sheet()).limits();
  }

  /**
   * The sheet as far as it is known: answers and suggestions; limits follow from it when it is
   * read.
   */
  public JobSheet sheet() {
    String name = answer(SheetQuestion.WHAT);
    JobSheet.SetInfo set =
        new JobSheet.SetInfo(
            name == null ? "unnamed set" : name,
            kind(),
            answer(SheetQuestion.CHASSIS),
            flag(SheetQuestion.MOTOR),
            flag(SheetQuestion.VALVE_RECTIFIER));
    JobSheet.Supply supply =
        new JobSheet.Supply(
            supplyKind(),
            place(),
            volts(),
            null,
            null,
            number(SheetQuestion.SUPPLY_LIMIT),
            number(SheetQuestion.FUSE),
            null,
            through(),
            number(SheetQuestion.LABEL),
            number(SheetQuestion.IDLE),
            number(SheetQuestion.CAPACITANCE));
    return new JobSheet(1, set, supply, null, List.of(), null, Map.of());
  }

  private double volts() {
    Double said = number(SheetQuestion.VOLTS);
    return said == null ? STARTING_V : said;
  }

  private String feed() {
    return answer(SheetQuestion.FEED);
  }

  private String supplyKind() {
    String feed = feed();
    boolean mains = "lamp".equals(feed) || "variable-transformer".equals(feed);
    return mains ? "mains-transformer" : feed;
  }

  private String through() {
    String feed = feed();
    return "lamp".equals(feed) || "variable-transformer".equals(feed) ? feed : null;
  }

  private String kind() {
    return orSuggested(SheetQuestion.KIND);
  }

  /** Only a set with a transformer of its own leaves a choice. */
  private String place() {
    return "mains-transformer".equals(supplyKind())
        ? orSuggested(SheetQuestion.PLACE)
        : answer(SheetQuestion.PLACE);
  }

  private Boolean flag(SheetQuestion question) {
    String answer = orSuggested(question);
    return answer == null ? null : (Boolean) answer.equals("yes");
  }

  private String orSuggested(SheetQuestion question) {
    if (isAnswered(question)) {
      return answer(question);
    }
    Suggestion suggestion = suggestion(question);
    return suggestion == null ? null : suggestion.answer();
  }

  private Double number(SheetQuestion question) {
    String answer = answer(question);
    return answer == null ? null : (Double) Double.parseDouble(answer);
  }
}
