package firstamp.emulate.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import firstamp.emulate.bench.Joined;
import firstamp.model.samples.Channel;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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
  /** Seconds, then volts on the set side, ampere in the leads, volts on the rail. */
  private static final double[][] START = {
    {0.0005, 10.45998, 2.432671, 0.003694812},
    {0.002, 8.952945, 1.695308, 0.02747522},
    {0.01, 11.53872, 1.711355, 0.3713987},
    {0.03, 11.78246, 0.7909992, 1.874318},
    {0.1, 11.88953, 0.4347398, 5.805294},
    {0.3, 11.96803, 0.1732009, 8.073107},
    {0.9, 11.98424, 0.1191952, 8.205278},
  };

  private static final double[][] LOOK = {
    {0.005, 0.2302948, 0.03570471, 0.002220877},
    {0.05, 0.8265769, 0.0338989, 0.1442228},
    {0.2, 1.948464, 0.03050132, 1.005641},
    {0.6, 3.476757, 0.02587293, 2.544461},
    {1.2, 4.325218, 0.0233034, 3.405371},
    {1.9, 4.592445, 0.02249411, 3.676519},
  };

  private static final double[][] SHORT = {
    {0.4995, 11.98128, 0.1290572, 8.195998},
    {0.5001, 9.606806, 7.433004, 8.195928},
    {0.5005, 6.640671, 4.125822, 8.194938},
    {0.501, 5.109602, 2.48321, 8.192147},
    {0.505, 3.674234, 1.563595, 8.111399},
    {0.54, 1.943968, 1.502446, 6.184884},
  };

  private static final double SHORT_AT_S = 0.5;
  private static final double BLEEDER_OHM = 10_000;

  @TempDir Path folder;

  @Test
  void healthyStartFollowsNgspice() {
    follows(START, Joined.CLOSED, Script.NONE);
  }

  @Test
  void lookFollowsNgspice() {
    follows(LOOK, Joined.LOOK, Script.NONE);
  }

  @Test
  void shortFollowsNgspice() {
    follows(SHORT, Joined.CLOSED, shortAtHalfSecond());
  }

  private static Script shortAtHalfSecond() {
    return (set, sinceS) ->
        set.shortOhm = sinceS >= SHORT_AT_S - 1e-9 ? 1.2 : Double.POSITIVE_INFINITY;
  }

  @Test
  void ngspiceStillMeasuresTheFiguresAbove() throws Exception {
    boolean there = new NgspiceRun(folder).installed();
    Assumptions.assumeTrue(there, "ngspice is not installed");
    measuredAgain("start.cir", START);
    measuredAgain("look.cir", LOOK);
    measuredAgain("short.cir", SHORT);
  }

  private static void follows(double[][] rows, Joined joined, Script script) {
    CircuitBench bench = new CircuitBench(new SetValues(), script, 1);
    bench.join(joined);
    // From the same edge as the netlist: 3, 42 and 17.5 us, the steps of the running probe.
    double now = 0;
    int piece = 0;
    double[] pieces = {3e-6, 42e-6, 17.5e-6};
    for (double[] row : rows) {
      while (now < row[0] - 1e-9) {
        double edge = now < SHORT_AT_S - 1e-9 ? SHORT_AT_S : row[0];
        now = Math.min(Math.min(edge, row[0]), now + pieces[piece++ % 3]);
        bench.advance(now, false);
      }
      double ampere = row[2] - row[1] / BLEEDER_OHM;
      String at = joined + " at " + row[0] * 1000 + " ms";
      // Half a count of the nominal build, and what backward differences of 21 us cost where the
      // time constant is 0.7 ms (the short): 1.4 %.
      assertEquals(row[1], bench.value(Channel.V), 0.005 * row[1] + 0.03, at + " V");
      assertEquals(ampere, bench.value(Channel.I), 0.02 * ampere + 0.0002, at + " I");
      assertEquals(row[3], bench.value(Channel.R1), 0.005 * row[3] + 0.01, at + " rail");
    }
  }

  private void measuredAgain(String netlist, double[][] rows) throws Exception {
    copy("circuit.cir");
    copy(netlist);
    String output = new NgspiceRun(folder).of(netlist);
    Matcher matcher = Pattern.compile("(?m)^(?:vs|il|vb) +=\\s+(\\S+)").matcher(output);
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
