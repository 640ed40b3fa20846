package firstamp.hardware;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * One bench of {@code hardware/bench}, run by ngspice in a folder of its own, with parts and
 * parameters changed as a test wants. Not for threads to share.
 */
final class Bench {
  private static final Path HARDWARE = Path.of("hardware");
  private static final Pattern RESULT = Pattern.compile("^(\\w+)\\s+=\\s+([-+0-9.eE]+)\\b.*");
  private static final Map<String, Double> SUFFIX =
      Map.of("", 1.0, "p", 1e-12, "n", 1e-9, "u", 1e-6, "m", 1e-3, "k", 1e3, "Meg", 1e6);

  private final String name;
  private final Map<String, Double> factors = new LinkedHashMap<>();
  private final Map<String, String> values = new LinkedHashMap<>();
  private final Map<String, String> params = new LinkedHashMap<>();

  Bench(String name) {
    this.name = name;
  }

  /** Multiplies the value of a resistor or capacitor, as a tolerance does. */
  Bench scale(String ref, double factor) {
    factors.put(ref, factor);
    return this;
  }

  /** Puts another value, in the simulator's spelling, or another model in place of a part's. */
  Bench replace(String ref, String value) {
    values.put(ref, value);
    return this;
  }

  /** Sets a parameter that the bench or the models declare. */
  Bench with(String param, String value) {
    params.put(param, value);
    return this;
  }

  /** Measured values by name. A measurement that the simulator could not make is absent. */
  Map<String, Double> run(Path folder) throws IOException, InterruptedException {
    Map<String, Boolean> used = new HashMap<>();
    for (String part : List.of("bench", "netlists")) {
      Files.createDirectories(folder.resolve(part));
      try (Stream<Path> files = Files.list(HARDWARE.resolve(part))) {
        for (Path file : files.toList()) {
          List<String> lines =
              Files.readAllLines(file).stream().map(line -> changed(line, used)).toList();
          Files.write(folder.resolve(part).resolve(file.getFileName()), lines);
        }
      }
    }
    for (Map<String, ?> wanted : List.of(factors, values, params)) {
      for (String key : wanted.keySet()) {
        if (!used.containsKey(key)) {
          throw new IllegalArgumentException(name + ": no part or parameter is called " + key);
        }
      }
    }
    Path output = folder.resolve("output.txt");
    Process process =
        new ProcessBuilder("ngspice", "-b", "bench/" + name + ".cir")
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .redirectOutput(output.toFile())
            .start();
    if (!process.waitFor(300, TimeUnit.SECONDS)) {
      process.destroyForcibly();
      throw new IOException("ngspice did not finish bench " + name + " within 300 s");
    }
    Map<String, Double> results = new TreeMap<>();
    for (String line : Files.readAllLines(output)) {
      Matcher m = RESULT.matcher(line);
      if (m.matches()) {
        results.put(m.group(1), Double.parseDouble(m.group(2)));
      }
    }
    if (results.isEmpty()) {
      throw new IOException(
          "ngspice measured nothing in bench " + name + ":\n" + Files.readString(output));
    }
    return results;
  }

  private String changed(String line, Map<String, Boolean> used) {
    String[] words = line.split(" ");
    if (words[0].equals(".param")) {
      String key = words[1].split("=")[0];
      if (params.containsKey(key)) {
        used.put(key, true);
        return ".param " + key + "=" + params.get(key);
      }
      return line;
    }
    int bar = words[0].indexOf('_');
    String ref = bar == 1 ? words[0].substring(2) : "";
    String last = words[words.length - 1];
    if (factors.containsKey(ref)) {
      used.put(ref, true);
      last = String.valueOf(number(last) * factors.get(ref));
    }
    if (values.containsKey(ref)) {
      used.put(ref, true);
      last = values.get(ref);
    }
    words[words.length - 1] = last;
    return String.join(" ", words);
  }

  static double number(String text) {
    Matcher m = Pattern.compile("([0-9.]+)(\\w*)").matcher(text);
    if (!m.matches() || !SUFFIX.containsKey(m.group(2))) {
      throw new IllegalArgumentException("no value: " + text);
    }
    return Double.parseDouble(m.group(1)) * SUFFIX.get(m.group(2));
  }
}
