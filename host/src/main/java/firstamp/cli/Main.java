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
import firstamp.cli.output.Sentences;
import firstamp.cli.output.StandardOutput;
import firstamp.cli.output.UsageWords;
import firstamp.cli.run.LookOptions;
import firstamp.cli.run.ThisBench;
import firstamp.log.BenchLog;
import firstamp.model.RulesVersion;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
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
    String wrong = wrongWord(arguments);
    if (wrong != null) {
      System.err.println("firstamp: " + Sentences.ended(wrong));
      return ExitCode.USAGE;
    }
    CommandLine line = lineFor(arguments);
    line.setParameterExceptionHandler(Main::usage);
    line.setExecutionExceptionHandler((failure, command, parsed) -> report(failure));
    line.setExitCodeExceptionMapper(failure -> ExitCode.DEFECT);
    return line.execute(arguments);
  }

  /**
   * What the parser would answer with somebody else's help: a command that is not there. Null where
   * nothing is wrong.
   */
  private static String wrongWord(String... arguments) {
    for (String argument : arguments) {
      if (argument.indexOf('\uFFFD') >= 0) {
        return "the letters of '"
            + argument
            + "' did not arrive whole. Start Firstamp by its launcher, or under a UTF-8 locale"
            + " (LC_ALL=C.UTF-8)";
      }
    }
    if (arguments.length == 0 || arguments[0].startsWith("-")) {
      return null;
    }
    if (arguments[0].equals("job")) {
      return "`job` (everything kept about one set over the months) comes with a later version."
          + " Today `firstamp list` shows the power-ups";
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
    return commandLine(COMMANDS);
  }

  /**
   * What these arguments need. To read the options of a command takes longer than to parse them,
   * and a window is waited for: so the others are read only where the first argument names none of
   * them.
   */
  static CommandLine lineFor(String... arguments) {
    if (arguments.length == 0) {
      return commandLine(List.of());
    }
    List<Class<?>> named =
        COMMANDS.stream().filter(each -> nameOf(each).equals(arguments[0])).toList();
    return commandLine(named.isEmpty() ? COMMANDS : named);
  }

  private static CommandLine commandLine(List<Class<?>> commands) {
    CommandLine line = new CommandLine(new Main());
    commands.forEach(each -> line.addSubcommand(nameOf(each), each));
    addHelp(line);
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
    line.getCommandSpec().usageMessage().width(110);
    line.getSubcommands().values().forEach(Main::addHelp);
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
      throw new CliFailure(ExitCode.DEFECT, "the page of licences cannot be read", unreadable);
    }
  }

  private static int usage(ParameterException problem, String[] arguments) {
    PrintStream err = System.err;
    err.println("firstamp: " + Sentences.ended(UsageWords.of(problem)));
    err.println("See `" + problem.getCommandLine().getCommandSpec().qualifiedName() + " --help`.");
    return ExitCode.USAGE;
  }

  private static int report(Exception failure) {
    if (failure instanceof CliFailure known) {
      System.err.println("firstamp: " + Sentences.ended(known.getMessage()));
      return known.exitCode();
    }
    System.err.println(
        "firstamp: a defect in this program: "
            + failure
            + ". What was recorded is kept. Please report it with what you did.");
    if (Boolean.getBoolean("firstamp.trace")) {
      failure.printStackTrace(System.err);
    } else {
      System.err.println("For the trace: FIRSTAMP_JAVA_OPTIONS=-Dfirstamp.trace=true");
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
      throw new ParameterException(
          spec.commandLine(), "a command is missing, and " + noWindow.getMessage());
    }
  }
}
