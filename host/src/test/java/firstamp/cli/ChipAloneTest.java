package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import firstamp.protocol.codes.Resend;
import firstamp.protocol.frame.Frame;
import firstamp.protocol.frame.FrameDecoder;
import firstamp.protocol.frame.FrameEncoder;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.ProbeMessage;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * The chip whose host is killed or whose cable is pulled opens the switch by itself. Runs in real
 * time, one test at a time.
 */
@Tag("chip")
@Timeout(value = 120, unit = TimeUnit.SECONDS)
final class ChipAloneTest extends ChipCase {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  @Test
  void killedHostLeavesTheSwitchOffWithinTheSilenceLimit() throws Exception {
    try (ChipRig chip = ChipRig.start(folder, waveform(STEADY))) {
      List<String> command =
          new ArrayList<>(
              List.of(
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                  "-Dfirstamp.lockFolder=" + folder.resolve("lock"),
                  "-cp",
                  System.getProperty("java.class.path"),
                  "firstamp.cli.Main"));
      command.addAll(watch(chip, folder.resolve("killed.db"), "--for", "60s", "--readings"));
      Process host =
          new ProcessBuilder(command).redirectError(folder.resolve("host.err").toFile()).start();
      double lastMs = killAfter(host, 1500);
      long off = chip.awaitOff(10);
      double offMs = (off - chip.lastSwitchMicros("on")) / 1000.0;
      // The last heartbeat went out at most 100 ms before the kill; what the host had printed may
      // lag behind a little.
      assertThat(offMs).isBetween(lastMs + 1800, lastMs + 2310);
      ProbeMessage.Trip trip = askForTrip(chip, 1);
      assertThat(trip.cause().name()).isEqualTo("HOST_SILENCE");
      assertThat(tripTick - trip.crossedTickMicros())
          .as("last frame to pin, us")
          .isBetween(2_000_000L, 2_010_000L);
    }
    // The log of the killed host opens, and lacks at most the last commits.
    CommandRunner.Result listed =
        CommandRunner.run("list", "--json", "--log", folder.resolve("killed.db").toString());
    assertThat(listed.exitCode()).as(listed.err()).isZero();
    assertThat(listed.json("powerUp").get(0).path("outcome").asText()).isEqualTo("interrupted");
  }

  private long tripTick;

  private static double killAfter(Process host, double atMs)
      throws IOException, InterruptedException {
    double last = -1;
    try (BufferedReader out =
        new BufferedReader(new InputStreamReader(host.getInputStream(), StandardCharsets.UTF_8))) {
      for (String line = out.readLine(); line != null; line = out.readLine()) {
        JsonNode node = MAPPER.readTree(line);
        if ("reading".equals(node.path("type").asText())) {
          last = node.path("atMs").asDouble();
        }
        if (last >= atMs) {
          host.destroyForcibly();
          host.waitFor();
          return last;
        }
      }
    }
    throw new AssertionError("the host ended by itself after " + last + " ms");
  }

  /** Speaks to the chip without the host, which is dead. */
  private ProbeMessage.Trip askForTrip(ChipRig chip, int number) throws IOException {
    List<ProbeMessage.Trip> trips = new ArrayList<>();
    FrameDecoder decoder =
        new FrameDecoder(
            new FrameDecoder.Sink() {
              @Override
              public void frame(Frame frame) {
                if (frame.message() instanceof ProbeMessage.Trip trip) {
                  trips.add(trip);
                  tripTick = frame.tickMicros();
                }
              }
            });
    try (RandomAccessFile line = new RandomAccessFile(chip.port(), "rw")) {
      line.write(0);
      line.write(new FrameEncoder().encode(new HostMessage.SendAgain(Resend.TRIP, number)));
      byte[] buffer = new byte[4096];
      while (trips.isEmpty()) {
        int n = line.read(buffer);
        decoder.push(buffer, 0, Math.max(0, n));
      }
    }
    return trips.get(0);
  }

  @Test
  void pulledCableLeavesTheSwitchOffWithinTheSilenceLimit() throws Exception {
    int pulledMs = 9000;
    try (ChipRig chip =
        ChipRig.start(folder, waveform(STEADY), "--close-at-ms", Integer.toString(pulledMs))) {
      CommandRunner.Result result = run(watch(chip, folder.resolve("log.db"), "--for", "30s"));
      assertThat(result.exitCode()).as(result.err()).isEqualTo(74);
      assertThat(result.summary().path("ended").asText()).isEqualTo("link-lost");
      assertThat(result.json("link").get(0).path("state").asText()).isEqualTo("lost");
      long on = chip.lastSwitchMicros("on");
      long off = chip.lastSwitchMicros("off");
      assertThat(on)
          .as("the switch was closed before the cable was pulled")
          .isLessThan(pulledMs * 1000L);
      assertThat(off - pulledMs * 1000L).isBetween(0L, 2_010_000L);
    }
  }
}
