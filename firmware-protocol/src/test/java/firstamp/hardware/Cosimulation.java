package firstamp.hardware;

import firstamp.protocol.codes.LineSpeed;
import firstamp.protocol.codes.StreamKind;
import firstamp.protocol.frame.FrameDecoder;
import firstamp.protocol.frame.FrameEncoder;
import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.LookParameters;
import firstamp.protocol.values.TripLimits;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The probe's program in the simulated chip and the circuit of {@code hardware/bench} round it,
 * simulated together by {@code probe-cosim}. The host is a script in the probe's time. Not for
 * threads to share.
 */
final class Cosimulation {
  static final String PROGRAM = "firmware/build/probe-cosim";

  private static final Path ELF = Path.of("firmware/build/probe.elf");

  /** The circuit that the program's pins are made for today. */
  static final Path BENCH = Path.of("hardware/bench").toAbsolutePath();

  private static final Pattern EVENT =
      Pattern.compile(".*\"t_us\":(\\d+),\"pin\":\"(\\w+)\".*\"level\":\"(\\w+)\".*");
  private static final Pattern FRAME =
      Pattern.compile(".*\"t_us\":(\\d+),\"bytes\":\"([0-9a-f]+)\".*");
  private static final Pattern WATCHED =
      Pattern.compile(
          "\"(\\w+)\":\\{\"highest\":([^,]+),\"highestAtS\":([^,]+),\"lowest\":([^,]+),"
              + "\"lowestAtS\":([^,]+),\"integral\":([^,]+),\"last\":([^}]+)\\}");
  private static final int HEARTBEAT_MS = 100;

  /** As the parts make it: 20 counts up on I, J and 10 on V; 12.5 A, 400 mA, 61.594 V over 1024. */
  static final String CALIBRATED =
      """
      {"I":{"unit":"A","atZero":-0.2441,"atFull":12.2559},"J":{"unit":"A","atZero":-0.00852,"atFull":0.39148},
       "V":{"unit":"V","atZero":-0.605,"atFull":60.989}}""";

  private final Path folder;
  private final StringBuilder joined = new StringBuilder();
  private final Map<String, String> params = new LinkedHashMap<>();
  private final TreeMap<Double, List<HostMessage>> host = new TreeMap<>();
  private final List<String> options = new ArrayList<>();
  private String frontEnd;

  /** A change of an output pin. */
  record PinChange(double ms, String pin, String level) {}

  /** The course of a node of the circuit. */
  record Course(double highest, double highestAtS, double lowest, double integral, double last) {}

  /** What came of a run. */
  record Result(List<PinChange> pins, List<ProbeMessage> messages, Map<String, Course> courses) {
    /** When a pin went to a level for the first time; NaN = never. */
    double firstMs(String pin, String level) {
      return pins.stream()
          .filter(change -> change.pin().equals(pin) && change.level().equals(level))
          .mapToDouble(PinChange::ms)
          .findFirst()
          .orElse(Double.NaN);
    }

    /** The messages of one kind. */
    <M extends ProbeMessage> List<M> of(Class<M> kind) {
      return messages.stream().filter(kind::isInstance).map(kind::cast).toList();
    }
  }

  /** A supply of 12 V with 470 uF, 1 uH of lead each way, a set of 210 ohm and 1000 uF. */
  Cosimulation(Path folder) {
    this.folder = folder;
    with("volts", "12").with("ilim", "2").with("csup", "470u").with("esr", "50m");
    with("lead", "1u").with("cset", "1000u").with("esrset", "80m").with("rset", "210");
    with("shortat", "1e6").with("shortohm", "1").with("bounce", "0");
    // chassis 0: module in the plus lead; both jaws of the chassis clip on
    with("chassis", "0").with("rsup", "50m").with("rmotor", "1e9");
    with("jaw", "10m").with("sense", "1").with("usb", "5");
  }

  /** A host that asks for a look of 300 ms and the switch, of a set of 12 V nominal. */
  static Cosimulation powerUp(Path folder) {
    TripLimits limits = TripLimits.builder().running(100, 0).silenceMillis(10_000).build();
    LookParameters look = new LookParameters(false, 300, 563, 5, 51, 61, 236);
    return new Cosimulation(folder)
        .at(70, new HostMessage.HelloRequest(LineSpeed.FAST))
        .at(90, new HostMessage.SetLimits(limits))
        .at(95, new HostMessage.StreamRequest(StreamKind.RAW))
        .at(105, new HostMessage.SwitchOn(look));
  }

  /** Joins something that does not belong there, in the simulator's spelling. */
  Cosimulation joined(String part) {
    joined.append(part).append('\n');
    return this;
  }

  /** Sets a parameter of {@code powered.inc}, in the simulator's spelling. */
  Cosimulation with(String param, String value) {
    params.put(param, value);
    return this;
  }

  /** The host sends a message at this time of the probe. */
  Cosimulation at(double ms, HostMessage message) {
    host.computeIfAbsent(ms, none -> new ArrayList<>()).add(message);
    return this;
  }

  /** A calibrated box: its channels as a front-end file gives them. */
  Cosimulation calibrated(String channels) {
    frontEnd = channels;
    return this;
  }

  /** A further option of the program. */
  Cosimulation option(String name, String value) {
    options.addAll(List.of(name, value));
    return this;
  }

  Result run(double ms) throws IOException, InterruptedException {
    for (double beat = HEARTBEAT_MS; beat < ms; beat += HEARTBEAT_MS) {
      at(beat, new HostMessage.Heartbeat());
    }
    Path circuit = folder.resolve("circuit.cir");
    StringBuilder text = new StringBuilder(".param");
    params.forEach((name, value) -> text.append(' ').append(name).append('=').append(value));
    Files.writeString(
        circuit, text + "\n.include \"" + BENCH.resolve("powered.inc") + "\"\n" + joined);
    Files.writeString(folder.resolve("host"), script());
    List<String> command = new ArrayList<>();
    command.addAll(List.of(PROGRAM, "--elf", ELF.toString(), "--circuit", circuit.toString()));
    command.addAll(List.of("--pins", BENCH.resolve("pins.txt").toString()));
    command.addAll(List.of("--for-ms", Double.toString(ms)));
    command.addAll(List.of("--host", folder.resolve("host").toString()));
    command.addAll(List.of("--line", folder.resolve("line").toString()));
    command.addAll(List.of("--events", folder.resolve("events").toString()));
    for (String node : List.of("amps", "across", "set")) {
      command.addAll(List.of("--watch", node));
    }
    if (frontEnd != null) {
      Path file = folder.resolve("front-end.json");
      Files.writeString(file, "{\"channels\":" + frontEnd + "}");
      command.addAll(List.of("--front-end", file.toString()));
    }
    command.addAll(options);
    return read(output(command));
  }

  /** Runs the program and gives what it printed; an exit other than 0 is an error with its text. */
  static String output(List<String> command) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String printed = new String(process.getInputStream().readAllBytes());
    if (!process.waitFor(300, TimeUnit.SECONDS)) {
      process.destroyForcibly();
      throw new IOException(command + " did not finish");
    }
    if (process.exitValue() != 0) {
      throw new IOException("exit " + process.exitValue() + ": " + printed);
    }
    return printed;
  }

  private String script() {
    FrameEncoder encoder = new FrameEncoder();
    StringBuilder lines = new StringBuilder();
    host.forEach(
        (ms, messages) -> {
          for (HostMessage message : messages) {
            String bytes = HexFormat.of().formatHex(encoder.encode(message));
            lines.append(String.format(Locale.ROOT, "%.3f %s%n", ms, bytes));
          }
        });
    return lines.toString();
  }

  private Result read(String printed) throws IOException {
    List<PinChange> pins = new ArrayList<>();
    for (String line : Files.readAllLines(folder.resolve("events"))) {
      Matcher m = EVENT.matcher(line);
      if (m.matches()) {
        pins.add(new PinChange(Long.parseLong(m.group(1)) / 1000.0, m.group(2), m.group(3)));
      }
    }
    List<ProbeMessage> messages = new ArrayList<>();
    FrameDecoder decoder = new FrameDecoder(frame -> messages.add((ProbeMessage) frame.message()));
    for (String line : Files.readAllLines(folder.resolve("line"))) {
      Matcher m = FRAME.matcher(line);
      if (m.matches()) {
        byte[] bytes = HexFormat.of().parseHex(m.group(2));
        decoder.push(bytes, 0, bytes.length);
      }
    }
    Map<String, Course> courses = new TreeMap<>();
    Matcher m = WATCHED.matcher(printed);
    while (m.find()) {
      courses.put(
          m.group(1),
          new Course(number(m, 2), number(m, 3), number(m, 4), number(m, 6), number(m, 7)));
    }
    return new Result(pins, messages, courses);
  }

  private static double number(Matcher m, int group) {
    return Double.parseDouble(m.group(group));
  }
}
