package firstamp.cli;

import firstamp.emulate.Scenarios;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Records what the program prints for a fixed body of runs, so that a change which should change
 * nothing can be compared with the state before it: {@code diff -r BEFORE AFTER}. What differs from
 * run to run by its nature (identifiers, times of day, paths) is masked.
 *
 * <p>Arguments: the folder to write to; then, if wanted, folders with further logs.
 */
public final class Corpus {
  private static final Pattern UUID =
      Pattern.compile("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}");
  private static final Pattern TIME_OF_DAY =
      Pattern.compile(
          "20\\d\\d-\\d\\d-\\d\\d[T ]\\d\\d:\\d\\d(:\\d\\d)?(\\.\\d+)?(Z|[+-]\\d\\d:\\d\\d)?");

  /** How often a log was committed decides its size. */
  private static final Pattern SIZE = Pattern.compile("\"bytes\":\\d+|[\\d.]+ [kM]?B\\b");

  private final Path to;
  private final Path work;

  private Corpus(Path to, Path work) {
    this.to = to;
    this.work = work;
  }

  /** Records; ends with an exception where a file cannot be written. */
  public static void main(String[] arguments) throws IOException {
    Locale.setDefault(Locale.ROOT);
    Path to = Files.createDirectories(Path.of(arguments[0]));
    Corpus corpus = new Corpus(to, Files.createTempDirectory("corpus"));
    for (String scenario : Scenarios.names()) {
      corpus.scenario(scenario);
    }
    corpus.run("sheet-questions", "sheet", "new", "--help");
    corpus.logs(Path.of("sample-logs"));
    corpus.logs(Path.of("host/src/test/resources/logs"));
    for (int i = 1; i < arguments.length; i++) {
      corpus.logs(Path.of(arguments[i]));
    }
  }

  private void scenario(String name) throws IOException {
    String log = work.resolve(name + ".db").toString();
    run(
        "demo-" + name,
        "demo",
        "--headless",
        "--json",
        "--readings",
        "--speed",
        "max",
        "--for",
        "3s",
        "--scenario",
        name,
        "--log",
        log);
    run("demo-" + name + "-show", "show", "last", "--log", log);
    run("demo-" + name + "-show-json", "show", "last", "--json", "--log", log);
    run("demo-" + name + "-replay", "replay", "last", "--headless", "--speed", "max", "--log", log);
  }

  private void logs(Path folder) throws IOException {
    List<Path> logs;
    try (Stream<Path> files = Files.list(folder)) {
      logs = files.filter(file -> file.toString().endsWith(".firstamp")).sorted().toList();
    }
    for (Path log : logs) {
      log(log);
    }
  }

  private void log(Path original) throws IOException {
    String name = original.getFileName().toString().replace(".firstamp", "");
    String log = Files.copy(original, work.resolve(name + ".copy.db")).toString();
    run(name + "-list", "list", "--log", log);
    run(name + "-show", "show", "last", "--log", log);
    run(name + "-show-json", "show", "last", "--json", "--log", log);
    run(
        name + "-replay",
        "replay",
        "last",
        "--headless",
        "--json",
        "--readings",
        "--speed",
        "max",
        "--log",
        log);
    run(name + "-compare", "compare", "last", "last", "--log", log);
    run(name + "-csv", "export", "last", "--format", "csv", "--to", "-", "--log", log);
    run(name + "-json", "export", "last", "--format", "json", "--to", "-", "--log", log);
    Path report = work.resolve(name + ".html");
    run(name + "-report", "report", "last", "--to", report.toString(), "--log", log);
    if (Files.exists(report)) {
      write(name + "-report.html", List.of(Files.readString(report)));
    }
    run(name + "-check", "log", "check", log);
  }

  private void run(String name, String... arguments) throws IOException {
    CommandRunner.Result result = CommandRunner.run(arguments);
    List<String> lines = new ArrayList<>();
    lines.add("exit " + result.exitCode());
    lines.addAll(result.out());
    lines.add("-- standard error");
    result.err().lines().filter(line -> !line.endsWith(" so far")).forEach(lines::add);
    write(name, lines);
  }

  private void write(String name, List<String> lines) throws IOException {
    List<String> masked = lines.stream().map(this::masked).toList();
    Files.write(to.resolve(name), masked);
  }

  private String masked(String line) {
    String plain = line.replace(work.toString(), "WORK");
    plain = UUID.matcher(plain).replaceAll("UUID");
    plain = SIZE.matcher(plain).replaceAll("SIZE");
    return TIME_OF_DAY.matcher(plain).replaceAll("TIME");
  }
}
