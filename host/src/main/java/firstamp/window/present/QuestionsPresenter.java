package firstamp.window.present;

import firstamp.app.QuestionFlow;
import firstamp.app.SheetEntries;
import firstamp.model.text.Worded;
import firstamp.sheet.SheetForm;
import firstamp.sheet.SheetQuestion;
import firstamp.window.words.Numbers;
import firstamp.window.words.Spoken;
import firstamp.window.words.Words;
import java.util.ArrayList;
import java.util.List;

/** Words around the questions of a new sheet. Without state. */
public final class QuestionsPresenter {
  private static final double HIGHEST_V = 60;

  private final Words words;
  private final Numbers numbers;
  private final Spoken spoken;

  public QuestionsPresenter(Words words, Numbers numbers) {
    this.words = words;
    this.numbers = numbers;
    this.spoken = new Spoken(words.locale());
  }

  public String step(QuestionFlow flow) {
    SheetQuestion question = flow.question();
    if (question == null) {
      return words.get("questions.step.end", name(flow));
    }
    return question.first()
        ? words.get("questions.step", question.ordinal() + 1, SheetQuestion.firstCount())
        : words.get("questions.step.more", name(flow));
  }

  private String name(QuestionFlow flow) {
    return flow.name().isEmpty() ? words.get("home.noName") : flow.name();
  }

  /** A number that was taken, as a person writes it. */
  public String number(String taken) {
    return numbers.short3(Double.parseDouble(taken));
  }

  /** Why the last answer was not taken; empty = it was. */
  public String problem(QuestionFlow flow) {
    if (flow.refused() == null) {
      return "";
    }
    SheetQuestion question = flow.refused().question();
    if ("mains-direct".equals(flow.refusedAnswer())) {
      return words.get("refused.mains-direct");
    }
    Double number = SheetEntries.number(flow.refusedAnswer());
    if (question == SheetQuestion.VOLTS && number != null && number > HIGHEST_V) {
      return words.get("refused.above-60");
    }
    return question.unit().isEmpty()
        ? words.get("questions.refused", flow.refusedAnswer())
        : words.get("questions.refused.number", flow.refusedAnswer(), question.unit());
  }

  /** What follows from the answers and what it costs not to know the rest, a line each. */
  public String summary(SheetForm form) {
    List<String> lines = new ArrayList<>();
    lines.add(words.get("questions.limits"));
    List<SheetForm.Limit> limits = form.suggestedLimits();
    for (SheetForm.Limit limit : limits) {
      String what =
          limit.field().isEmpty()
              ? words.get("questions.yourSupply")
              : words.get("field." + limit.field());
      lines.add(
          words.get(
              "questions.limit",
              what,
              numbers.inUnit(limit.value(), limit.unit()).toString(),
              spoken.say(limit.why())));
    }
    if (form.costs().isEmpty()) {
      return String.join("\n", lines);
    }
    lines.add("");
    lines.add(words.get("questions.costs"));
    for (Worded cost : form.costs()) {
      lines.add(words.get("questions.cost", spoken.say(cost)));
    }
    return String.join("\n", lines);
  }
}
