package firstamp.emulate.circuit;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** Runs a netlist in a folder. */
record NgspiceRun(Path folder) {
  /** Whether it is there; a run that asks for all tools fails without it. */
  boolean installed() throws InterruptedException {
    try {
      Process process =
          new ProcessBuilder("ngspice", "--version").redirectErrorStream(true).start();
      process.getInputStream().readAllBytes();
      return process.waitFor() == 0;
    } catch (IOException absent) {
      System.err.println(
          "SKIPPED: the circuit model was not run against ngspice, which is not installed"
              + " (apt-get install ngspice); its figures of version 39 were used.");
      assertFalse(
          Boolean.getBoolean("firstamp.requireTools"), "ngspice is required and not installed");
      return false;
    }
  }

  /** What it prints. */
  String of(String netlist) throws Exception {
    Process process =
        new ProcessBuilder("ngspice", "-b", netlist)
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .start();
    process.getOutputStream().close();
    String output = new String(process.getInputStream().readAllBytes());
    assertTrue(process.waitFor(60, TimeUnit.SECONDS), "ngspice did not end");
    return output;
  }
}
