package firstamp.benchmarks;

import firstamp.log.BenchLog;
import firstamp.model.TimeSource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * The whole chain in a process of its own that is held to one processor: two threads that run side
 * by side on one core slow each other, and what one thread takes is asked for. The middle of three
 * such processes: now and then the machine's code comes out a tenth slower for a whole process.
 */
final class ChainRun {
  private static final int WARM_UPS = 8;
  private static final int RUNS = 15;
  private static final int PROCESSES = 3;

  /** Nanoseconds of the processor for a conversion, of the session and of the log. */
  record Figures(double sessionNanos, double logNanos) {
    double nanos() {
      return sessionNanos + logNanos;
    }
  }

  private ChainRun() {}

  /** Mix, seed, number of conversions, folder to write into; prints the two figures. */
  public static void main(String[] arguments) throws Exception {
    short[] counts = new short[Integer.parseInt(arguments[2])];
    new SetSignal(Mix.valueOf(arguments[0]), Long.parseLong(arguments[1])).next(counts);
    byte[] line = WholeChain.line(counts);
    Path file = Path.of(arguments[3], "chain.db");
    List<WholeChain.Spent> runs = new ArrayList<>();
    for (int k = 0; k < WARM_UPS + RUNS; k++) {
      BenchLog log = BenchLog.open(file, TimeSource.system());
      WholeChain.Spent spent = WholeChain.run(log, line);
      log.closeWithin(0);
      Files.delete(file);
      if (k >= WARM_UPS) {
        runs.add(spent);
      }
    }
    runs.sort(Comparator.comparingDouble(WholeChain.Spent::onOneThread));
    WholeChain.Spent middle = runs.get(RUNS / 2);
    System.out.printf(
        Locale.ROOT,
        "%s %s%n",
        1e9 * middle.chainSeconds() / counts.length,
        1e9 * middle.logSeconds() / counts.length);
  }

  /** Runs it on the last processor; the data are made again there, the same to the bit. */
  static Figures onOneProcessor(Mix mix, long seed, int conversions, Path folder)
      throws IOException, InterruptedException {
    List<Figures> processes = new ArrayList<>();
    for (int k = 0; k < PROCESSES; k++) {
      processes.add(one(mix, seed, conversions, folder));
    }
    processes.sort(Comparator.comparingDouble(Figures::nanos));
    return processes.get(PROCESSES / 2);
  }

  private static Figures one(Mix mix, long seed, int conversions, Path folder)
      throws IOException, InterruptedException {
    int last = Runtime.getRuntime().availableProcessors() - 1;
    List<String> command = new ArrayList<>(List.of("taskset", "-c", String.valueOf(last)));
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-Xmx2g", "-XX:+UseSerialGC", "--enable-native-access=ALL-UNNAMED"));
    command.addAll(List.of("-cp", System.getProperty("java.class.path")));
    command.addAll(List.of(ChainRun.class.getName(), mix.name(), String.valueOf(seed)));
    command.addAll(List.of(String.valueOf(conversions), folder.toString()));
    Process process =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
    String[] told = new String(process.getInputStream().readAllBytes()).strip().split(" ");
    if (process.waitFor() != 0 || told.length != 2) {
      throw new IOException(command + " ended with " + process.exitValue());
    }
    return new Figures(Double.parseDouble(told[0]), Double.parseDouble(told[1]));
  }
}
