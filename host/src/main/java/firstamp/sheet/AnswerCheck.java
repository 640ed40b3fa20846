package firstamp.sheet;

import java.util.List;
import java.util.Locale;

/** Checks an answer to a question of the sheet before the form takes it. */
final class AnswerCheck {
  private static final double HIGHEST_V = 60;

  private AnswerCheck() {}

  /**
   * The answer as the form keeps it.
   *
   * @throws AnswerRefused it cannot be taken; says what can
   */
  static String taken(SheetQuestion question, String answer) throws AnswerRefused {
    if (!question.unit().isEmpty()) {
      return Double.toString(number(question, answer));
    }
    if (question.choices().isEmpty()) {
      if (answer.isEmpty() || answer.length() > Keys.LONGEST_TEXT) {
        throw new AnswerRefused(question, SheetException.words("answer.name", Keys.LONGEST_TEXT));
      }
      return answer;
    }
    List<String> ids = question.choices().stream().map(SheetQuestion.Choice::id).toList();
    String word = answer.toLowerCase(Locale.ROOT).replace(' ', '-');
    if (question == SheetQuestion.CHASSIS) {
      word = word.equals("+") || word.equals("plus") ? "positive" : word;
      word = word.equals("-") || word.equals("minus") ? "negative" : word;
    }
    if (!ids.contains(word)) {
      throw new AnswerRefused(
          question,
          SheetException.words(
              "answer.choice", answer, String.join(", ", ids), SpellingSuggestion.to(word, ids)));
    }
    if (word.equals("mains-direct")) {
      throw new AnswerRefused(question, SheetQuestion.word("refused.mains-direct"));
    }
    return word;
  }

  private static double number(SheetQuestion question, String answer) throws AnswerRefused {
    Double number = Amount.of(answer, question.unit());
    if (question == SheetQuestion.VOLTS && number != null && number > HIGHEST_V) {
      throw new AnswerRefused(question, SheetQuestion.word("refused.above-60"));
    }
    Range range = (Range) Keys.SUPPLY.get(key(question));
    if (number == null || !range.holds(number)) {
      throw new AnswerRefused(
          question, SheetException.words("answer.number", answer, range.phrase()));
    }
    return number;
  }

  /** Key of the sheet's supply that a number goes to. */
  private static String key(SheetQuestion question) {
    return switch (question) {
      case VOLTS -> "nominalV";
      case FUSE -> "fuseA";
      case SUPPLY_LIMIT -> "limitA";
      case LABEL -> "labelW";
      case IDLE -> "idleA";
      case CAPACITANCE -> "capacitanceUf";
      default -> throw new IllegalArgumentException("no number: " + question);
    };
  }
}
