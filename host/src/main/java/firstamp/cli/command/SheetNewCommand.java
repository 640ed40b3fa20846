package firstamp.cli.command;

import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.OutputFile;
import firstamp.cli.output.Prompt;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.model.limits.LimitException;
import firstamp.model.samples.Calibration;
import firstamp.model.text.Explained;
import firstamp.model.text.Worded;
import firstamp.sheet.AnswerRefused;
import firstamp.sheet.SheetCheck;
import firstamp.sheet.SheetForm;
import firstamp.sheet.SheetQuestion;
import firstamp.sheet.SheetWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A new job sheet from five questions. */
@Command(
    name = "new",
    description = {
      "Makes a job sheet from five questions: what is it, how many volts, which pole is the chassis, what feeds it, which fuse.",
      "Each may be answered with ? (don't know); what will not be watched then is printed. Questions answered by an option are not asked.",
      "Mains and stored charge can kill; circuits up to 60 V dc / 30 V rms only. Local electrical codes and licensed practice come first.",
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  firstamp sheet new set.json                      asks",
      "  firstamp sheet new set.json --more               asks for fuse, label and the rest too",
      "  firstamp sheet new set.json --what \"pocket radio\" --volts 9 --chassis positive --feed battery",
      "  firstamp sheet new set.json --what \"reel recorder\" --volts 24 --chassis negative --feed mains-transformer --fuse 1 --label 18",
      "  firstamp sheet new set.json --what \"small amplifier\" --volts ? --chassis ? --feed bench --supply-limit 0.5",
    })
final class SheetNewCommand implements Callable<Integer> {
  private final Speech speech;

  SheetNewCommand(Speech speech) {
    this.speech = speech;
  }

  private static final String NUMBER_OR = "or ? for don't know";

  @Parameters(paramLabel = "FILE", description = "job sheet to make (JSON)")
  private Path file;

  @Option(names = "--what", paramLabel = "NAME", description = "what it is: any name, or ?")
  private String what;

  @Option(names = "--volts", paramLabel = "V", description = "volts it runs on, " + NUMBER_OR)
  private String volts;

  @Option(
      names = "--chassis",
      paramLabel = "POLE",
      description = "pole of the supply that is the chassis: negative, positive or ?")
  private String chassis;

  @Option(
      names = "--feed",
      paramLabel = "FEED",
      description =
          "bench, battery, adaptor, mains-transformer, lamp, variable-transformer (both: with the set's own transformer) or ?")
  private String feed;

  @Option(
      names = "--kind",
      paramLabel = "KIND",
      description = "recorder, receiver, amplifier, computer, other; else taken from the name")
  private String kind;

  @Option(
      names = "--place",
      paramLabel = "PLACE",
      description =
          "where the probe box sits in a set with a mains transformer: reservoir-fed (first choice up to 30 V), before-reservoir, after-reservoir, not-connected")
  private String place;

  @Option(names = "--fuse", paramLabel = "A", description = "fuse, " + NUMBER_OR)
  private String fuse;

  @Option(
      names = "--supply-limit",
      paramLabel = "A",
      description = "setting of the bench supply's limit, " + NUMBER_OR)
  private String supplyLimit;

  @Option(names = "--label", paramLabel = "W", description = "watts on its label, " + NUMBER_OR)
  private String label;

  @Option(
      names = "--idle",
      paramLabel = "A",
      description = "idle current when it was in order, " + NUMBER_OR)
  private String idle;

  @Option(
      names = "--capacitance",
      paramLabel = "UF",
      description = "all filter capacitors together, " + NUMBER_OR)
  private String capacitance;

  @Option(names = "--motor", paramLabel = "YES", description = "yes or no: a motor will run")
  private String motor;

  @Option(
      names = "--valve-rectifier",
      paramLabel = "YES",
      description = "yes or no: a valve rectifies its mains")
  private String valveRectifier;

  @Option(names = "--more", description = "ask for everything that is useful")
  private boolean more;

  @Option(names = "--force", description = "replace the file if it is there")
  private boolean force;

  @Override
  public Integer call() throws CliFailure {
    OutputFile.check(file, force);
    SheetForm form = fromOptions();
    Prompt prompt = new Prompt(speech);
    for (SheetQuestion question : form.stillToAsk()) {
      form = ask(prompt, form, question);
    }
    if (more) {
      for (SheetQuestion question : form.alsoUseful()) {
        form = ask(prompt, form, question);
      }
    }
    String text = SheetWriter.write(form.sheet());
    OutputFile.write(file, force, aside -> Files.writeString(aside, text));
    print(form);
    return ExitCode.NORMAL;
  }

  private SheetForm fromOptions() throws CliFailure {
    Map<SheetQuestion, String> given = new LinkedHashMap<>();
    given.put(SheetQuestion.WHAT, what);
    given.put(SheetQuestion.VOLTS, volts);
    given.put(SheetQuestion.CHASSIS, chassis);
    given.put(SheetQuestion.FEED, feed);
    given.put(SheetQuestion.KIND, kind);
    given.put(SheetQuestion.PLACE, place);
    given.put(SheetQuestion.FUSE, fuse);
    given.put(SheetQuestion.SUPPLY_LIMIT, supplyLimit);
    given.put(SheetQuestion.LABEL, label);
    given.put(SheetQuestion.IDLE, idle);
    given.put(SheetQuestion.CAPACITANCE, capacitance);
    given.put(SheetQuestion.MOTOR, motor);
    given.put(SheetQuestion.VALVE_RECTIFIER, valveRectifier);
    SheetForm form = SheetForm.empty();
    for (Map.Entry<SheetQuestion, String> one : given.entrySet()) {
      if (one.getValue() != null) {
        try {
          form = form.answered(one.getKey(), one.getValue());
        } catch (AnswerRefused refused) {
          throw new CliFailure(
              ExitCode.USAGE,
              Said.of("sheet-new.option", one.getKey().id(), Explained.of(refused)),
              refused);
        }
      }
    }
    return form;
  }

  /** Asks until the answer can be taken; an empty line takes what is suggested, else "?". */
  private SheetForm ask(Prompt prompt, SheetForm form, SheetQuestion question) throws CliFailure {
    SheetForm.Suggestion suggestion = question.first() ? null : form.suggestion(question);
    StringBuilder words =
        new StringBuilder(question.words(speech.locale()))
            .append(speech.in(Said.of("sheet-new.unknown")));
    words.append("\n  ").append(question.hint(speech.locale()));
    for (SheetQuestion.Choice choice : question.choices()) {
      words
          .append("\n    ")
          .append(choice.id())
          .append(": ")
          .append(question.words(choice, speech.locale()));
    }
    if (suggestion != null) {
      words.append('\n');
      words.append(speech.in(Said.of("sheet-new.enter", suggestion.answer(), suggestion.why())));
    }
    while (true) {
      String answer = prompt.answer(words.toString());
      if (answer.isEmpty() && question.first()) {
        speech.err(Said.of("sheet-new.an-answer-is-needed-is"));
        continue;
      }
      String taken = !answer.isEmpty() ? answer : suggestion == null ? "?" : suggestion.answer();
      try {
        SheetForm next = form.answered(question, taken);
        Worded cost = next.cost(question);
        if (cost != null) {
          speech.err(Said.of("indented", cost));
        }
        return next;
      } catch (AnswerRefused refused) {
        speech.err(Said.of("indented", Explained.of(refused)));
      }
    }
  }

  private void print(SheetForm form) throws CliFailure {
    speech.out(Said.of("sheet-learn.is-written", file));
    speech.out(Said.of("sheet-new.limits-that-follow"));
    for (SheetForm.Limit limit : form.suggestedLimits()) {
      Object name = limit.field().isEmpty() ? Said.of("sheet-new.bench-supply") : limit.field();
      String value = speech.figures().value(limit.value(), limit.unit());
      speech.out(Said.of("sheet-new.limit", name, value, limit.why()));
    }
    speech.out(Said.of("sheet-new.what-is-not-known-and"));
    form.costs().forEach(cost -> speech.out(Said.of("indented", cost)));
    try {
      SheetCheck check = SheetCheck.of(form.sheet(), Calibration.nominal(), false);
      check.warnings().forEach(warning -> speech.out(Said.of("sheet-new.mind", warning)));
    } catch (LimitException unfit) {
      throw new CliFailure(ExitCode.BAD_DATA, unfit.words(), unfit);
    }
    speech.out(Said.of("sheet-new.next-firstamp-sheet-check", file));
    speech.out(Said.of("sheet-new.after-a-good-power-up", file));
  }
}
