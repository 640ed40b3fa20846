package firstamp.emulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import firstamp.model.Channel;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The circuit model against ngspice 39 (Debian 12), netlists in the test resources. The figures
 * below were measured with it; where it is installed they are measured again.
 */
final class CircuitAgainstNgspiceTest {
  /** Seconds, then volts on the set side, at the supply's terminals, on the rail. */
  private static final double[][] START = {
    {0.0005, 10.46064, 10.70389, 0.003705528},
    {0.002, 8.930336, 9.099338, 0.02748285},
    {0.01, 11.54642, 11.71798, 0.3708967},
    {0.03, 11.78235, 11.86147, 1.873367},
    {0.1, 11.88951, 11.93299, 5.804838},
    {0.3, 11.96803, 11.98535, 8.073082},
    {0.9, 11.98424, 11.99616, 8.205278},
  };

  private static final double[][] LOOK = {
    {0.005, 0.2302953, 12.01286, 0.002220872},
    {0.05, 0.8265772, 12.01322, 0.1442229},
    {0.2, 1.948464, 12.01390, 1.005641},
    {0.6, 3.476757, 12.01483, 2.544461},
    {1.2, 4.325218, 12.01534, 3.405371},
    {1.9, 4.592445, 12.01550, 3.676519},
  };

  private static final double[][] SHORT = {
    {0.4995, 11.98128, 11.99419, 8.195996},
    {0.5001, 9.789053, 10.55285, 8.195948},
    {0.5005, 6.632543, 7.044012, 8.194988},
    {0.501, 5.070090, 5.313807, 8.192219},
    {0.505, 3.674119, 3.830456, 8.111499},
    {0.54, 1.943962, 2.094206, 6.184951},
  };

  private static final double SWITCH_OHM = 0.1;
  private static final double BLEEDER_OHM = 10_000;

  @TempDir Path folder;

  @Test
  void healthyStartFollowsNgspice() {
    follows(START, Joined.CLOSED, SWITCH_OHM, Script.NONE);
  }

  @Test
  void lookFollowsNgspice() {
    follows(LOOK, Joined.LOOK, 330, Script.NONE);
  }

  @Test
  void shortFollowsNgspice() {
    follows(SHORT, Joined.CLOSED, SWITCH_OHM, shortAtHalfSecond());
  }

  private static Script shortAtHalfSecond() {
    return (set, sinceS) -> set.shortOhm = sinceS >= 0.5 ? 1.2 : Double.POSITIVE_INFINITY;
  }

  @Test
  void ngspiceStillMeasuresTheFiguresAbove() throws Exception {
    boolean there = installed();
    if (!there) {
      System.err.println(
          "SKIPPED: the circuit model was not run against ngspice, which is not installed"
              + " (apt-get install ngspice); its figures of version 39 were used.");
      assertFalse(
          Boolean.getBoolean("firstamp.requireTools"), "ngspice is required and not installed");
    }
    Assumptions.assumeTrue(there, "ngspice is not installed");
    measuredAgain("start.cir", START);
    measuredAgain("look.cir", LOOK);
    measuredAgain("short.cir", SHORT);
  }

  private static void follows(double[][] rows, Joined joined, double joinOhm, Script script) {
    CircuitBench bench = new CircuitBench(new SetValues(), script, 1);
    bench.join(joined);
    // From the same edge as the netlist: 3, 42 and 17.5 us, the steps of the running probe.
    double now = 0;
    int piece = 0;
    double[] pieces = {3e-6, 42e-6, 17.5e-6};
    for (double[] row : rows) {
      while (now < row[0] - 1e-9) {
        now = Math.min(row[0], now + pieces[piece++ % 3]);
        bench.advance(now, false);
      }
      double ampere = (row[2] - row[1]) / joinOhm - row[1] / BLEEDER_OHM;
      String at = joined + " at " + row[0] * 1000 + " ms";
      // Half a count of the nominal build, and what backward differences of 21 us cost where the
      // time constant is 0.7 ms (the short): 1.4 %.
      assertEquals(row[1], bench.value(Channel.V), 0.005 * row[1] + 0.03, at + " V");
      assertEquals(ampere, bench.value(Channel.I), 0.02 * ampere + 0.0002, at + " I");
      assertEquals(row[3], bench.value(Channel.R1), 0.005 * row[3] + 0.01, at + " rail");
    }
  }

  private static boolean installed() throws InterruptedException {
    try {
      Process process =
          new ProcessBuilder("ngspice", "--version").redirectErrorStream(true).start();
      process.getInputStream().readAllBytes();
      return process.waitFor() == 0;
    } catch (IOException absent) {
      return false;
    }
  }

  private void measuredAgain(String netlist, double[][] rows) throws Exception {
    copy("circuit.cir");
    copy(netlist);
    Process process =
        new ProcessBuilder("ngspice", "-b", netlist)
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .start();
    process.getOutputStream().close();
    String output = new String(process.getInputStream().readAllBytes());
    assertTrue(process.waitFor(60, TimeUnit.SECONDS), "ngspice did not end");
    Matcher matcher = Pattern.compile("(?m)^v[sxb] +=\\s+(\\S+)").matcher(output);
    List<Double> found = new ArrayList<>();
    while (matcher.find()) {
      found.add(Double.valueOf(matcher.group(1)));
    }
    assertEquals(3 * rows.length, found.size(), output);
    for (int i = 0; i < found.size(); i++) {
      double pinned = rows[i / 3][1 + i % 3];
      assertEquals(pinned, found.get(i), 0.002 * Math.abs(pinned) + 1e-4, netlist + " " + i);
    }
  }

  private void copy(String name) throws IOException {
    try (InputStream in = getClass().getResourceAsStream(name)) {
      Files.write(folder.resolve(name), in.readAllBytes());
    }
  }
}
