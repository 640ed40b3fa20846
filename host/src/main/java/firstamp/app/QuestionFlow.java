package firstamp.app;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.sheet.AnswerRefused;
import firstamp.sheet.SheetForm;
import firstamp.sheet.SheetQuestion;
import firstamp.sheet.SheetWriter;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;

/**
 * The way through the questions of a new job sheet and the further ones: which one comes next, what
 * was answered, where it was left. Knows no display; not thread-safe.
 */
public final class QuestionFlow {
  private static final ObjectMapper MAPPER = new ObjectMapper();
  private static final String ANSWERS = "answers";

  private final Deque<SheetQuestion> asked = new ArrayDeque<>();
  private SheetForm form = SheetForm.empty();
  private SheetQuestion question;
  private AnswerRefused refused;
  private String refusedAnswer;

  /**
   * A flow that begins, or continues where it was left.
   *
   * @param begunJson what {@link #begun} gave, null = start with none
   */
  public QuestionFlow(String begunJson) {
    JsonNode answers = answers(begunJson);
    for (SheetQuestion each : SheetQuestion.values()) {
      JsonNode answer = answers.path(each.id());
      if (answer.isTextual()) {
        try {
          form = form.answered(each, answer.asText());
          asked.push(each);
        } catch (AnswerRefused outdated) {
          // Asked again: what can be answered may have changed since.
          question = null;
        }
      }
    }
    question = first();
  }

  private static JsonNode answers(String json) {
    try {
      return json == null ? MAPPER.createObjectNode() : MAPPER.readTree(json).path(ANSWERS);
    } catch (JsonProcessingException damaged) {
      return MAPPER.createObjectNode();
    }
  }

  private SheetQuestion first() {
    List<SheetQuestion> open = form.stillToAsk();
    return open.isEmpty() ? null : open.get(0);
  }

  /** What is asked now; null = enough is known. */
  public SheetQuestion question() {
    return question;
  }

  public SheetForm form() {
    return form;
  }

  /** How many of those that are always asked are answered. */
  int answered() {
    return SheetQuestion.firstCount() - form.stillToAsk().size();
  }

  /** Why the last answer was not taken, null = it was. */
  public AnswerRefused refused() {
    return refused;
  }

  /** The answer that was not taken. */
  public String refusedAnswer() {
    return refusedAnswer;
  }

  /** Takes an answer and continues; blank means "don't know". */
  public boolean answer(String text) {
    SheetQuestion now = question;
    if (now == null) {
      return false;
    }
    String answer = text == null || text.isBlank() ? SheetForm.UNKNOWN : text.replace(',', '.');
    if (now == SheetQuestion.WHAT && text != null && !text.isBlank()) {
      answer = text;
    }
    try {
      form = form.answered(now, answer);
    } catch (AnswerRefused no) {
      refused = no;
      refusedAnswer = answer;
      return false;
    }
    refused = null;
    asked.remove(now);
    asked.push(now);
    if (now.first()) {
      question = first();
    } else {
      more();
    }
    return true;
  }

  /** Continues with the further questions; after the last there is nothing more to ask. */
  public void more() {
    List<SheetQuestion> useful = form.stillToAsk().isEmpty() ? form.alsoUseful() : List.of();
    question = useful.isEmpty() ? null : useful.get(0);
  }

  /** No further questions. */
  void enough() {
    if (form.stillToAsk().isEmpty()) {
      question = null;
    }
  }

  /** To the question before; false at the first one. */
  public boolean back() {
    refused = null;
    if (asked.isEmpty()) {
      return false;
    }
    question = asked.pop();
    return true;
  }

  /** To a certain question, for example because a name is taken. */
  public void ask(SheetQuestion again) {
    question = again;
  }

  /** Name of the set, empty = not said. */
  public String name() {
    String name = form.answer(SheetQuestion.WHAT);
    return name == null ? "" : name;
  }

  /** Text of the sheet. */
  public String sheetJson() {
    return SheetWriter.write(form.sheet());
  }

  /** What has to be kept so that it can be taken up again. */
  public String begun() {
    ObjectNode root = MAPPER.createObjectNode();
    root.putObject("set").put("name", name());
    ObjectNode answers = root.putObject(ANSWERS);
    for (SheetQuestion each : SheetQuestion.values()) {
      if (form.isAnswered(each)) {
        String answer = form.answer(each);
        answers.put(each.id(), answer == null ? SheetForm.UNKNOWN : answer);
      }
    }
    return root.toPrettyString() + "\n";
  }

  /** Whether there is anything to keep. */
  public boolean isBegun() {
    return Arrays.stream(SheetQuestion.values()).anyMatch(form::isAnswered);
  }
}
