package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import firstamp.cli.run.ThisBench;
import firstamp.log.BenchLog;
import firstamp.log.stream.StreamSink;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.model.TimeSource;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import firstamp.model.samples.SamplePlan;
import firstamp.protocol.Frame;
import firstamp.protocol.FrameDecoder;
import firstamp.protocol.FrameEncoder;
import firstamp.protocol.HostMessage;
import firstamp.protocol.ProbeMessage;
import firstamp.protocol.Resend;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The main job on the firmware's own binary, over a real port. Runs in real time, one test at a
 * time.
 */
@Tag("chip")
@Timeout(value = 120, unit = TimeUnit.SECONDS)
class ChipTest {
  private static final ObjectMapper MAPPER = new ObjectMapper();
  private static final String SHEET =
      "{\"sheet\":1,\"set\":{\"name\":\"Set behind the chip (invented)\",\"kind\":\"recorder\",\"chassis\":\"negative\"},"
          + "\"supply\":{\"kind\":\"bench\",\"nominalV\":12,\"minV\":5,\"maxV\":13.5,\"limitA\":6,\"fuseA\":5},"
          + "\"limits\":{\"inrushA\":4.5,\"inrushMs\":60,\"runningA\":1.0,\"i2tA2s\":0.5},"
          + "\"rails\":[{\"input\":1,\"name\":\"B1\",\"nominalV\":8.2,\"settleMs\":300}]}";
  private static final String STEADY =
      "t_s,supply_V,supply_A,rail1_V\n0,12,0,0\n0.001,11.8,1.8,0.5\n0.05,11.95,0.5,6\n0.2,11.97,0.12,8.2\n30,11.97,0.12,8.2\n";
  private static final String SHORT_AT_1_S =
      "t_s,supply_V,supply_A,rail1_V\n0,12,0,0\n0.001,11.8,1.8,0.5\n0.05,11.95,0.5,6\n0.2,11.97,0.12,8.2\n"
          + "1.0,11.97,0.12,8.2\n1.000001,6,5,7\n5,6,5,2\n";

  @TempDir Path folder;
  private Path sheet;

  @BeforeEach
  void writeSheet() throws IOException {
    ChipRig.assumeTools();
    sheet = Files.writeString(folder.resolve("sheet.json"), SHEET);
  }

  private Path waveform(String text) throws IOException {
    return Files.writeString(folder.resolve("waveform.csv"), text);
  }

  private List<String> watch(ChipRig chip, Path log, String... more) {
    List<String> arguments =
        new ArrayList<>(
            List.of(
                "watch",
                "--port",
                chip.port(),
                "--sheet",
                sheet.toString(),
                "--accept",
                "floating-supply,above-60,tape-out",
                "--headless",
                "--json",
                "--countdown",
                "0",
                "--log",
                log.toString()));
    arguments.addAll(List.of(more));
    return arguments;
  }

  private static CommandRunner.Result run(List<String> arguments) {
    return CommandRunner.run(arguments.toArray(String[]::new));
  }

  @Test
  void shortIsCutWithinAMillisecondAndEveryConversionIsKept() throws Exception {
    Path log = folder.resolve("log.db");
    try (ChipRig chip =
        ChipRig.start(
            folder,
            waveform(SHORT_AT_1_S),
            "--noise-counts",
            "0.7",
            "--seed",
            "5",
            "--cross",
            "supply_A=1.0")) {
      CommandRunner.Result result = run(watch(chip, log, "--for", "3s"));
      assertThat(result.exitCode()).as(result.err()).isEqualTo(3);
      JsonNode summary = result.summary();
      assertThat(summary.path("tripCause").asText()).isEqualTo("running");
      assertThat(JsonSchemas.against(summary)).isEmpty();
      long crossed = -1;
      for (JsonNode event : chip.events()) {
        crossed = event.has("crossed") ? event.path("t_us").asLong() : crossed;
      }
      long off = chip.lastSwitchMicros("off");
      assertThat(off - crossed).as("from the crossing to the pin").isBetween(0L, 1000L);
      JsonNode sent = chip.end();
      assertThat(sent.path("bytesLost").asLong()).isZero();
      assertThat(summary.path("conversions").path("received").asLong())
          .isEqualTo(sent.path("conversionsSent").asLong())
          .isGreaterThan(40_000);
      assertThat(summary.path("conversions").path("lost").asLong()).isZero();
      assertThat(Stored.of(log).conversions).isEqualTo(sent.path("conversionsSent").asLong());
    }
    JsonNode replayed =
        CommandRunner.run(
                "replay", "last", "--headless", "--json", "--speed", "max", "--log", log.toString())
            .summary();
    JsonNode shown = CommandRunner.run("show", "last", "--json", "--log", log.toString()).summary();
    assertThat(replayed.path("alarms")).isEqualTo(shown.path("alarms"));
  }

  @Test
  void latchedTripIsRefusedUntilItsNumberIsGiven() throws Exception {
    Path log = folder.resolve("log.db");
    try (ChipRig chip = ChipRig.start(folder, waveform(SHORT_AT_1_S))) {
      assertThat(run(watch(chip, log, "--for", "2s")).exitCode()).isEqualTo(3);
      CommandRunner.Result refused = run(watch(chip, log, "--for", "2s"));
      assertThat(refused.exitCode()).isEqualTo(77);
      assertThat(refused.err()).contains("--restore 1").contains("running");
      CommandRunner.Result restored = run(watch(chip, log, "--for", "500ms", "--restore", "1"));
      assertThat(restored.exitCode()).as(restored.err()).isZero();
      assertThat(restored.summary().path("look").path("result").asText()).isEqualTo("clear");
    }
  }

  @Test
  void whatIsDifferentAndWhatWasMeasuredGoWithTheNextPowerUp() throws Exception {
    Path log = folder.resolve("log.db");
    try (ChipRig chip = ChipRig.start(folder, waveform(SHORT_AT_1_S))) {
      assertThat(run(watch(chip, log, "--for", "2s")).exitCode()).isEqualTo(3);
      List<String> half =
          watch(
              chip,
              log,
              "--for",
              "500ms",
              "--restore",
              "1",
              "--different",
              "nothing",
              "--half-volts");
      CommandRunner.Result full = run(half);
      assertThat(full.exitCode()).as("12 V where 6 V were promised: %s", full.err()).isEqualTo(3);
      assertThat(full.summary().path("look").path("result").asText()).isEqualTo("too-high");
      CommandRunner.Result restored =
          run(
              watch(
                  chip,
                  log,
                  "--for",
                  "500ms",
                  "--restore",
                  "1",
                  "--different",
                  "wire",
                  "--ohm",
                  "B1=820"));
      assertThat(restored.exitCode()).as(restored.err()).isZero();
      assertThat(restored.json("event"))
          .filteredOn(line -> line.path("kind").asText().equals("again"))
          .singleElement()
          .satisfies(
              line -> {
                assertThat(line.path("afterTrip").asInt()).isEqualTo(1);
                assertThat(line.path("different").asText()).isEqualTo("wire");
                assertThat(line.path("rail").asInt()).isEqualTo(1);
                assertThat(line.path("ohm").asDouble()).isEqualTo(820);
                assertThat(JsonSchemas.against(line)).isEmpty();
              });
    }
    assertThat(CommandRunner.run("show", "last", "--log", log.toString()).out())
        .anyMatch(line -> line.contains("Different: a wire.") && line.contains("820"));
  }

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

  @Test
  void secondHostOnOneProbeIsRefusedAndHarmsNothing() throws Exception {
    Path log = folder.resolve("log.db");
    try (ChipRig chip = ChipRig.start(folder, waveform(STEADY))) {
      List<String> command =
          new ArrayList<>(
              List.of(
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                  "-Dfirstamp.lockFolder=" + ThisBench.lockFolder(),
                  "-cp",
                  System.getProperty("java.class.path"),
                  "firstamp.cli.Main"));
      command.addAll(watch(chip, log, "--for", "2s"));
      Process first =
          new ProcessBuilder(command).redirectError(folder.resolve("host.err").toFile()).start();
      BufferedReader out =
          new BufferedReader(new InputStreamReader(first.getInputStream(), StandardCharsets.UTF_8));
      String started = out.readLine();
      assertThat(started).contains("started");
      CommandRunner.Result second = run(watch(chip, folder.resolve("second.db"), "--for", "1s"));
      assertThat(second.exitCode()).isEqualTo(69);
      assertThat(second.err()).contains(chip.port()).contains("in use by another Firstamp");
      String last = started;
      for (String line = out.readLine(); line != null; line = out.readLine()) {
        last = line;
      }
      assertThat(first.waitFor()).as(last).isZero();
      assertThat(MAPPER.readTree(last).path("conversions").path("lost").asLong()).isZero();
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"healthy", "wire-short", "lost-head", "motor-stall"})
  void chipAndEmulatedProbeSeeTheSame(String scenario) throws Exception {
    Path csv = folder.resolve(scenario + ".csv");
    Path frontEnd = folder.resolve(scenario + ".front-end.json");
    Path larch =
        Files.writeString(
            folder.resolve("larch.json"), firstamp.emulate.Scenarios.sheetJson(scenario));
    CommandRunner.run(
        "demo",
        "--headless",
        "--speed",
        "max",
        "--scenario",
        scenario,
        "--noise-counts",
        "0",
        "--for",
        "1500ms",
        "--log",
        folder.resolve("source.db").toString(),
        "--save-waveform",
        csv.toString());
    CommandRunner.Result emulated =
        CommandRunner.run(
            "demo",
            "--headless",
            "--json",
            "--speed",
            "max",
            "--noise-counts",
            "0",
            "--waveform",
            csv.toString(),
            "--front-end",
            frontEnd.toString(),
            "--sheet",
            larch.toString(),
            "--for",
            "1400ms",
            "--log",
            folder.resolve("emulated.db").toString());
    assertThat(emulated.out()).as(emulated.err()).isNotEmpty();
    sheet = larch;
    try (ChipRig chip =
        ChipRig.start(folder, csv, "--front-end", frontEnd.toString(), "--noise-counts", "0")) {
      CommandRunner.Result onChip = run(watch(chip, folder.resolve("chip.db"), "--for", "1400ms"));
      assertThat(onChip.exitCode()).as(onChip.err()).isEqualTo(emulated.exitCode());
    }
    Stored a = Stored.of(folder.resolve("emulated.db"));
    Stored b = Stored.of(folder.resolve("chip.db"));
    assertThat(b.decidedFromClosing)
        .as("trip on the same conversion")
        .isEqualTo(a.decidedFromClosing);
    a.sameWithinOneCount(b);
  }

  /** What a log holds of its last power-up, counted from the closing of the switch. */
  private static final class Stored implements StreamSink {
    private static final int KEPT = 16_000 * 13 / 10;

    private final short[] kept = new short[KEPT];
    private final boolean[] known = new boolean[KEPT];
    private final List<ConversionBlock> blocks = new ArrayList<>();
    private long closedIndex = -1;
    private long closedMicros;
    private long conversions;
    private Long decidedFromClosing;

    static Stored of(Path file) throws Exception {
      Stored stored = new Stored();
      try (BenchLog log = BenchLog.openForReading(file, TimeSource.system())) {
        log.find("last").replay(stored);
      }
      for (ConversionBlock block : stored.blocks) {
        for (int k = 0; k < block.counts().length; k++) {
          long at = block.firstIndex() + k - stored.closedIndex;
          if (at >= 0 && at < KEPT) {
            stored.kept[(int) at] = block.counts()[k];
            stored.known[(int) at] = true;
          }
        }
      }
      return stored;
    }

    @Override
    public void conversions(ConversionBlock block) {
      conversions += block.counts().length;
      blocks.add(block);
    }

    @Override
    public void reading(Reading reading) {
      throw new AssertionError("raw stream expected");
    }

    @Override
    public void event(ProbeEvent event) {
      if (event instanceof ProbeEvent.SwitchChanged changed && changed.state() == SwitchState.ON) {
        closedMicros = changed.micros();
        closedIndex = SamplePlan.indexAt(closedMicros);
      }
      if (event instanceof ProbeEvent.Tripped tripped) {
        decidedFromClosing = tripped.trip().decidedMicros() - closedMicros;
      }
    }

    /**
     * Every conversion up to the trip, but where the value runs away by more than a count in 10 us.
     */
    void sameWithinOneCount(Stored other) {
      int end = decidedFromClosing == null ? KEPT : (int) (decidedFromClosing * 2 / 125);
      int compared = 0;
      for (int at = 64; at < end; at++) {
        if (!known[at] || !other.known[at]) {
          continue;
        }
        compared++;
        int difference = Math.abs(kept[at] - other.kept[at]);
        if (difference > 1 && !steep(at)) {
          throw new AssertionError(
              "conversion "
                  + at
                  + " after closing: "
                  + kept[at]
                  + " emulated, "
                  + other.kept[at]
                  + " on the chip");
        }
      }
      assertThat(compared).isGreaterThan(Math.min(15_000, (end - 64) * 9 / 10));
    }

    /** Neighbours of the same slot, 2 ms apart or less, that differ by over 6 counts. */
    private boolean steep(int at) {
      int step = at % 4 == 3 ? 32 : 4;
      return at + step < KEPT && Math.abs(kept[at] - kept[at + step]) > 6
          || at >= step && Math.abs(kept[at] - kept[at - step]) > 6;
    }
  }
}
