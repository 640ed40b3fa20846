package firstamp.supply;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.link.SerialProbePort;
import firstamp.model.TimeSource;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The strict responder behind a pseudo-terminal, opened like any serial port, in real time. */
@Tag("pty")
class SupplyOnPtyTest {
  /** Opens a pseudo-terminal, says its name, and carries bytes between it and the pipes. */
  private static final String BRIDGE =
      """
      import os, pty, select, sys, tty
      master, slave = pty.openpty()
      tty.setraw(master); tty.setraw(slave)
      print(os.ttyname(slave), flush=True)
      while True:
          ready, _, _ = select.select([master, 0], [], [])
          if master in ready:
              os.write(1, os.read(master, 4096))
          if 0 in ready:
              data = os.read(0, 4096)
              if not data:
                  break
              os.write(master, data)
      """;

  private final StrictResponder responder = new StrictResponder();
  @TempDir private Path folder;
  private Process bridge;
  private BenchSupply supply;

  @BeforeEach
  void open() throws Exception {
    try {
      bridge = new ProcessBuilder("python3", "-c", BRIDGE).start();
    } catch (IOException missing) {
      String text = "SKIPPED: no python3 for a pseudo-terminal";
      System.err.println(text);
      if (Boolean.getBoolean("firstamp.requireTools")) {
        throw new AssertionError(text, missing);
      }
      Assumptions.abort(text);
    }
    BufferedReader from =
        new BufferedReader(
            new InputStreamReader(bridge.getInputStream(), StandardCharsets.US_ASCII));
    String port = from.readLine();
    OutputStream to = bridge.getOutputStream();
    Thread answering =
        new Thread(
            () -> {
              try {
                for (String line = from.readLine(); line != null; line = from.readLine()) {
                  for (String answer : responder.line(line)) {
                    to.write((answer + "\n").getBytes(StandardCharsets.US_ASCII));
                    to.flush();
                  }
                }
              } catch (IOException ended) {
                // The bridge was ended by the test.
                Thread.currentThread().interrupt();
              }
            },
            "responder");
    answering.setDaemon(true);
    answering.start();
    supply =
        new BenchSupply(
            SerialProbePort.open(port, 9600, folder.resolve("locks"), TimeSource.system()));
    supply.start();
  }

  @AfterEach
  void end() {
    if (supply != null) {
      supply.close();
    }
    if (bridge != null) {
      bridge.destroy();
    }
  }

  private SupplyState await(SupplyState.Phase phase, long ms) {
    for (int k = 0; k < ms; k++) {
      if (supply.state().phase() == phase) {
        return supply.state();
      }
      LockSupport.parkNanos(1_000_000);
    }
    throw new AssertionError("expected " + phase + ", is " + supply.state());
  }

  @Test
  void givesStepsAndSwitchesOff() {
    supply.give(6, 0.1);
    await(SupplyState.Phase.ON, 10_000);
    assertThat(responder.volts()).isEqualTo(6);
    assertThat(responder.on()).isTrue();
    supply.off();
    await(SupplyState.Phase.OFF, 10_000);
    assertThat(responder.on()).isFalse();
  }

  @Test
  void aLateAnswerIsNotMixedUp() {
    responder.fault("VOLT?", StrictResponder.Fault.LATE);
    supply.give(6, 0.1);
    await(SupplyState.Phase.ON, 15_000);
    assertThat(supply.state().volts()).isEqualTo(6);
  }

  @Test
  void aWrongAnswerSwitchesOff() {
    responder.fault("CURR?", StrictResponder.Fault.WRONG);
    supply.give(6, 0.1);
    assertThat(await(SupplyState.Phase.FAILED, 10_000).problem().english()).contains("CURR?");
    assertThat(responder.on()).isFalse();
  }

  @Test
  void silenceWhileOnSwitchesOff() {
    supply.give(6, 0.1);
    await(SupplyState.Phase.ON, 10_000);
    responder.fallsSilent();
    await(SupplyState.Phase.FAILED, 15_000);
    for (int k = 0; k < 5_000 && responder.on(); k++) {
      LockSupport.parkNanos(1_000_000);
    }
    assertThat(responder.on()).isFalse();
  }
}
