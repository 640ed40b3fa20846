package firstamp.cli;

import firstamp.cli.command.BenchCommand;
import firstamp.cli.command.CalibrateCommand;
import firstamp.cli.command.CompareCommand;
import firstamp.cli.command.DemoCommand;
import firstamp.cli.command.ExportCommand;
import firstamp.cli.command.ImportCommand;
import firstamp.cli.command.ListCommand;
import firstamp.cli.command.LocateCommand;
import firstamp.cli.command.LogCommand;
import firstamp.cli.command.PortsCommand;
import firstamp.cli.command.ReplayCommand;
import firstamp.cli.command.ReportCommand;
import firstamp.cli.command.SheetCommand;
import firstamp.cli.command.ShowCommand;
import firstamp.cli.command.TrialCommand;
import firstamp.cli.command.WatchCommand;
import firstamp.cli.output.CliFailure;
import firstamp.cli.output.ExitCode;
import firstamp.cli.output.Said;
import firstamp.cli.output.Sentences;
import firstamp.cli.output.Speech;
import firstamp.cli.output.StandardOutput;
import firstamp.cli.output.UsageProblem;
import firstamp.cli.output.UsageWords;
import firstamp.cli.run.LookOptions;
import firstamp.cli.run.ThisBench;
import firstamp.log.BenchLog;
import firstamp.model.RulesVersion;
import firstamp.model.text.Explained;
import firstamp.model.text.Worded;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ParameterException;

/** Start of the program. */
@Command(
    name = "firstamp",
    description = "Powers up a repaired set while watching it, and keeps a record.",
    footerHeading = "%nExamples:%n",
    footer = {
      "  firstamp                                           the window: sets, power-ups, a new set, the probe box",
      "  firstamp demo                                      an invented set on the practice box, in the window",
      "  firstamp demo --headless --scenario wire-short     the same on the command line, with a wire in the wrong place",
      "  firstamp watch --port /dev/ttyUSB0 --sheet set.json",
      "  firstamp list",
      "  firstamp replay last",
      "  firstamp --language de --log other.db              the window, in German, on another bench log",
      "",
      "--language, --theme, --scale and --log may also come before the command.",
      "",
      "Exit codes: 0 done, nothing found; 3 switched itself off, no draw or alarm; 64 usage; 65 bad sheet or log;",
      "66 input missing; 69 port absent, busy or not permitted; 70 defect; 73 output is there already or cannot be made;",
      "74 input/output error; 77 arming refused; 130 interrupted.",
    })
final class Main implements Callable<Integer> {
  private static final List<Class<?>> COMMANDS =
      List.of(
          BenchCommand.class,
          DemoCommand.class,
          PortsCommand.class,
          WatchCommand.class,
          ListCommand.class,
          ShowCommand.class,
          ReplayCommand.class,
          CompareCommand.class,
          ReportCommand.class,
          ExportCommand.class,
          ImportCommand.class,
          LogCommand.class,
          SheetCommand.class,
          CalibrateCommand.class,
          LocateCommand.class,
          TrialCommand.class);

  /** Commands that open a log in any case, and a person waits. */
  private static final Set<String> WITH_LOG =
      Set.of("bench", "demo", "watch", "list", "show", "replay");

  @CommandLine.Option(
      names = "--licences",
      description = "print the licences of all parts that are shipped")
  private boolean licences;

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  private Main() {}

  /** Runs a command and ends the process with its exit code. */
  public static void main(String[] given) {
    String[] arguments = LeadingOptions.behindTheCommand(given);
    if (arguments.length == 0 || WITH_LOG.contains(arguments[0])) {
      // The driver takes as long to read in as the options.
      Thread thread = new Thread(BenchLog::prepare, "log-prepare");
      thread.setDaemon(true);
      thread.start();
    }
    StandardOutput output = StandardOutput.install(arguments);
    int code = run(arguments);
    System.out.flush();
    System.exit(output.exitCode(code));
  }

  /** Runs a command; for tests, which must not end the process. */
  static int run(String... given) {
    String[] arguments = LeadingOptions.behindTheCommand(given);
    Speech speech = Speech.askedFor(arguments);
    Worded wrong = wrongWord(arguments);
    String language = Speech.language(arguments);
    if (wrong == null && language != null && !List.of("en", "de").contains(language)) {
      wrong = Said.of("language-option.language-expected-en-or-de", language);
    }
    if (wrong != null) {
      say(speech, wrong);
      return ExitCode.USAGE;
    }
    CommandLine line = lineFor(arguments);
    line.setParameterExceptionHandler((problem, parsed) -> usage(problem, speech));
    line.setExecutionExceptionHandler((failure, command, parsed) -> report(failure, speech));
    line.setExitCodeExceptionMapper(failure -> ExitCode.DEFECT);
    return line.execute(arguments);
  }

  /**
   * What the parser would answer with somebody else's help: a command that is not there. Null where
   * nothing is wrong.
   */
  private static Worded wrongWord(String... arguments) {
    for (String argument : arguments) {
      if (argument.indexOf('\uFFFD') >= 0) {
        return Said.of("usage.letters", argument);
      }
    }
    if (arguments.length == 0 || arguments[0].startsWith("-")) {
      return null;
    }
    if (arguments[0].equals("job")) {
      return Said.of("usage.job");
    }
    List<String> names = COMMANDS.stream().map(Main::nameOf).toList();
    if (!names.contains(arguments[0])) {
      return UsageWords.noCommand(arguments[0], "", names);
    }
    Map<String, CommandLine> below =
        lineFor(arguments).getSubcommands().get(arguments[0]).getSubcommands();
    boolean named =
        below.isEmpty()
            || arguments.length == 1
            || arguments[1].startsWith("-")
            || below.containsKey(arguments[1]);
    return named ? null : UsageWords.noCommand(arguments[1], arguments[0], below.keySet());
  }

  /** All commands with their help. */
  static CommandLine commandLine() {
    return commandLine(COMMANDS, Speech.ENGLISH);
  }

  /**
   * What these arguments need. To read the options of a command takes longer than to parse them,
   * and a window is waited for: so the others are read only where the first argument names none of
   * them.
   */
  static CommandLine lineFor(String... arguments) {
    Speech speech = Speech.askedFor(arguments);
    if (arguments.length == 0) {
      return commandLine(List.of(), speech);
    }
    List<Class<?>> named =
        COMMANDS.stream().filter(each -> nameOf(each).equals(arguments[0])).toList();
    return commandLine(named.isEmpty() ? COMMANDS : named, speech);
  }

  private static CommandLine commandLine(List<Class<?>> commands, Speech speech) {
    CommandLine line = new CommandLine(new Main(), new SpeakingFactory(speech));
    commands.forEach(each -> line.addSubcommand(nameOf(each), each));
    addHelp(line);
    if (Locale.GERMAN.getLanguage().equals(speech.locale().getLanguage())) {
      line.setResourceBundle(ResourceBundle.getBundle("firstamp.cli.help", Locale.GERMAN));
    }
    return line;
  }

  private static String nameOf(Class<?> command) {
    return command.getAnnotation(Command.class).name();
  }

  private static void addHelp(CommandLine line) {
    line.getCommandSpec().mixinStandardHelpOptions(true);
    line.getCommandSpec()
        .versionProvider(
            () ->
                new String[] {
                  "firstamp " + version(),
                  "rules " + RulesVersion.NOW + ", bench log schema " + BenchLog.SCHEMA
                });
    if (line.getCommandSpec().findOption("--language") == null && line.getSubcommands().isEmpty()) {
      line.getCommandSpec().addOption(language());
    }
    line.getCommandSpec().usageMessage().width(110);
    line.getSubcommands().values().forEach(Main::addHelp);
  }

  /** Read before the commands are made: they are made with it. */
  private static CommandLine.Model.OptionSpec language() {
    return CommandLine.Model.OptionSpec.builder("--language")
        .paramLabel("LANGUAGE")
        .type(String.class)
        .description("of what is printed for people: en or de (default en); JSON stays in English")
        .build();
  }

  private static String version() {
    String version = Main.class.getPackage().getImplementationVersion();
    return version == null ? "(not packaged)" : version;
  }

  /** The same page as in the papers. */
  private static String licences() throws CliFailure {
    try (InputStream page = Main.class.getResourceAsStream("licences.md")) {
      return new String(page.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new CliFailure(
          ExitCode.DEFECT, Said.of("main.the-page-of-licences-cannot"), unreadable);
    }
  }

  private static void say(Speech speech, Worded words) {
    System.err.println("firstamp: " + Sentences.ended(speech.in(words)));
  }

  private static int usage(ParameterException problem, Speech speech) {
    say(speech, UsageWords.of(problem));
    speech.err(Said.of("main.see-help", problem.getCommandLine().getCommandSpec().qualifiedName()));
    return ExitCode.USAGE;
  }

  private static int report(Exception failure, Speech speech) {
    if (failure instanceof CliFailure known) {
      say(speech, known.words());
      return known.exitCode();
    }
    speech.note(Said.of("main.a-defect-in-this-program", failure));
    if (Boolean.getBoolean("firstamp.trace")) {
      failure.printStackTrace(System.err);
    } else {
      speech.err(Said.of("main.for-the-trace-firstamp-java"));
    }
    return ExitCode.DEFECT;
  }

  /** Without a command: the window, where there is a screen for it. */
  @Override
  public Integer call() throws CliFailure {
    if (licences) {
      System.out.print(licences());
      return ExitCode.NORMAL;
    }
    try {
      return ThisBench.open(null, new LookOptions());
    } catch (CliFailure noWindow) {
      if (noWindow.exitCode() != ExitCode.USAGE) {
        throw noWindow;
      }
      throw new UsageProblem(
          spec.commandLine(), Said.of("main.a-command-is-missing-and", Explained.of(noWindow)));
    }
  }
}
