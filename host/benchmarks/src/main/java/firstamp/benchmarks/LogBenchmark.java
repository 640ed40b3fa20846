package firstamp.benchmarks;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import firstamp.log.BenchLog;
import firstamp.log.PowerUpReader;
import firstamp.model.TimeSource;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * Every figure of the bench log in one run on the same made-up data: JSON on the standard output
 * and in a file, and the table for the README.
 *
 * <p>System properties: {@code minutes} (10), {@code otherMinutes} of the other formats (as
 * minutes), {@code seeds} (2), {@code warmUps} (3), {@code out} (folder for the JSON file and the
 * table), {@code readme} (gets table and JSON file when all of it was run).
 */
public final class LogBenchmark {
  private static final int PER_MINUTE = 16_000 * 60;
  private static final int WARM_UP_SECONDS = 600;

  private final int minutes = Integer.getInteger("minutes", 10);
  private final int otherMinutes = Integer.getInteger("otherMinutes", minutes);
  private final int seeds = Integer.getInteger("seeds", 2);
  private final int warmUps = Integer.getInteger("warmUps", 3);
  private final Path out = Path.of(System.getProperty("out", "target"));
  private final Path folder;
  private final Map<String, Object> result = new LinkedHashMap<>();

  private LogBenchmark(Path folder) {
    this.folder = folder;
  }

  /** Runs everything. */
  public static void main(String[] arguments) throws Exception {
    Path folder = Files.createTempDirectory("firstamp-benchmark");
    try {
      new LogBenchmark(folder).run();
    } finally {
      clear(folder);
    }
  }

  private void run() throws Exception {
    result.put("commit", git());
    result.put("date", java.time.LocalDate.now(java.time.ZoneOffset.UTC).toString());
    result.put("machine", machine());
    result.put("minutes", minutes);
    result.put("otherMinutes", otherMinutes);
    warmUp();
    List<Map<String, Object>> runs = new ArrayList<>();
    for (Mix mix : Mix.values()) {
      for (long seed = 1; seed <= seeds; seed++) {
        runs.add(one(mix, seed, runs.isEmpty()));
      }
    }
    result.put("runs", runs);
    Files.createDirectories(out);
    ObjectMapper json = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);
    String text = json.writeValueAsString(result);
    Files.writeString(out.resolve("log.json"), text + "\n");
    String table = new LogTable(result, runs).markdown();
    Files.writeString(out.resolve("log.md"), table);
    if (System.getProperty("readme") != null && minutes == 10 && seeds == 2) {
      putInto(Path.of(System.getProperty("readme")), table);
      Files.copy(
          out.resolve("log.json"),
          Path.of(System.getProperty("readme")).resolveSibling("log-figures.json"),
          java.nio.file.StandardCopyOption.REPLACE_EXISTING);
    }
    System.out.println(table);
  }

  /** Between the two comments that mark the table's place. */
  private static void putInto(Path readme, String table) throws IOException {
    String begin = "<!-- log figures: written by LogBenchmark -->\n";
    String end = "<!-- end of log figures -->";
    String text = Files.readString(readme);
    int from = text.indexOf(begin);
    int to = text.indexOf(end);
    if (from < 0 || to < from) {
      throw new IOException(readme + " has no place for the table: expected " + begin + end);
    }
    Files.writeString(
        readme,
        text.substring(0, from + begin.length()) + "\n" + table + "\n" + text.substring(to));
  }

  private void warmUp() throws Exception {
    short[] counts = new short[WARM_UP_SECONDS * 16_000];
    new SetSignal(Mix.DICTATION, 99).next(counts);
    byte[] line = WholeChain.line(counts);
    Path packed = folder.resolve("warm.raw");
    PackedRaw.write(counts, packed);
    for (int k = 0; k < warmUps; k++) {
      PackedRaw.read(packed, counts.length);
      LogRun run = new LogRun(counts, folder, "warm");
      run.run(line);
      Files.delete(run.file());
    }
  }

  private Map<String, Object> one(Mix mix, long seed, boolean day) throws Exception {
    Map<String, Object> figures = new LinkedHashMap<>();
    short[] counts = new short[minutes * PER_MINUTE];
    SetSignal signal = new SetSignal(mix, seed);
    signal.next(counts);
    figures.put("mix", mix.name().toLowerCase(java.util.Locale.ROOT));
    figures.put("seed", seed);
    figures.put("boundBytes", signal.boundBits() / 8 / counts.length);
    Path packed = folder.resolve("packed.raw");
    PackedRaw.write(counts, packed);
    double packedRead = Clock.median(5, () -> PackedRaw.read(packed, counts.length));
    figures.put("packedRawReadPerSecond", counts.length / packedRead);
    LogRun run = new LogRun(counts, folder, mix + "-" + seed);
    System.err.println(mix + " " + seed + " ...");
    run.run(WholeChain.line(counts));
    ChainRun.Figures chain = ChainRun.onOneProcessor(mix, seed, counts.length, folder);
    figures.put("chainPerSecond", 1e9 / chain.nanos());
    figures.put("chainSessionNanos", chain.sessionNanos());
    figures.put("chainLogNanos", chain.logNanos());
    if (day) {
      day(run, counts.length);
    }
    figures.putAll(run.figures());
    figures.put("quietSetBytes", quietSet());
    short[] part = java.util.Arrays.copyOf(counts, Math.min(minutes, otherMinutes) * PER_MINUTE);
    if (otherMinutes > 0) {
      figures.put("otherFormats", new OtherFormats(part, folder).run());
    }
    System.err.println(figures);
    return figures;
  }

  /** A set of which every channel is quiet, repacked: nothing but noise. */
  private double quietSet() throws Exception {
    short[] counts = new short[minutes * PER_MINUTE];
    SetSignal.silence(5).next(counts);
    LogRun run = new LogRun(counts, folder, "quiet");
    double bytes = run.run(WholeChain.line(counts)).get("repackedBytes");
    Files.delete(run.file());
    return bytes;
  }

  private void day(LogRun run, long conversions) throws Exception {
    Path file = folder.resolve("day.db");
    long length = Day.make(run.file(), file, conversions);
    try (BenchLog log = BenchLog.openForReading(file, TimeSource.system())) {
      PowerUpReader power = log.find("1");
      run.pictures(file, power, "day", length);
    }
    Files.delete(file);
  }

  private static String machine() {
    return System.getProperty("os.name")
        + ", Java "
        + System.getProperty("java.version")
        + ", "
        + Runtime.getRuntime().availableProcessors()
        + " processors";
  }

  private static String git() throws IOException, InterruptedException {
    Process git =
        new ProcessBuilder("git", "rev-parse", "--short", "HEAD").redirectErrorStream(true).start();
    String text = new String(git.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
    return git.waitFor(10, TimeUnit.SECONDS) && git.exitValue() == 0 ? text : "unknown";
  }

  private static void clear(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.toList()) {
        Files.delete(file);
      }
    }
    Files.delete(folder);
  }
}
