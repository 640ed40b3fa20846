package firstamp.hardware;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Every part of a drawing is in the parts list and in one netlist, with one value. */
class PartsAgreeTest {
  private static final Path HARDWARE = Path.of("hardware");
  private static final Pattern DRAWN =
      Pattern.compile("data-ref=\"([^\"]+)\" data-value=\"([^\"]*)\"");

  private static final Pattern VALUE = Pattern.compile("([0-9.]+) ([mkMµnp]?)[ΩFH]");

  @Test
  void drawnPartsAreThoseOfTheList() throws IOException {
    Map<String, String> listed = listed();
    assertThat(listed).hasSizeGreaterThan(195);
    assertThat(drawn()).isEqualTo(listed);
  }

  @Test
  void theValueInTheDrawingIsReadableText() throws IOException {
    for (Path file : files("drawings", ".svg")) {
      String svg = Files.readString(file);
      for (String part : svg.split("<g class=\"part\"")) {
        Matcher m = DRAWN.matcher(part);
        if (m.find()) {
          assertThat(part).as("%s in %s", m.group(1), file).contains(">" + m.group(1) + "</text>");
          if (!m.group(2).isEmpty()) {
            assertThat(part).as("%s in %s", m.group(1), file).contains(">" + m.group(2) + "<");
          }
        }
      }
    }
  }

  @Test
  void netlistsHoldEveryPartOnceWithTheValueOfTheList() throws IOException {
    Map<String, String> listed = listed();
    Map<String, String> simulated = new TreeMap<>();
    for (Path file : files("netlists", ".cir")) {
      for (String line : Files.readAllLines(file)) {
        if (!line.startsWith("*")) {
          String[] words = line.split(" ");
          String previous = simulated.put(words[0].substring(2), words[words.length - 1]);
          assertThat(previous).as("second line for %s", words[0]).isNull();
        }
      }
    }
    assertThat(disagreements(listed, simulated)).isEmpty();
    assertThat(listed.values().stream().filter(VALUE.asMatchPredicate())).hasSizeGreaterThan(120);
  }

  @Test
  void aNetlistThatDoesNotMatchTheListIsNoticedPartByPart() {
    Map<String, String> listed = Map.of("R1", "10 kΩ", "R2", "4.7 kΩ", "C3", "100 nF", "U1", "");
    assertThat(disagreements(listed, Map.of("R1", "10k", "R2", "4.7k", "C3", "100n", "U1", "X")))
        .isEmpty();
    assertThat(disagreements(listed, Map.of("R1", "12k", "R2", "4.7k", "C3", "100n", "R9", "1k")))
        .containsExactlyInAnyOrder(
            "R1: 10 kΩ in the list, 12k in the netlist",
            "U1: in the list alone",
            "R9: in the netlist alone");
  }

  private static List<String> disagreements(
      Map<String, String> listed, Map<String, String> simulated) {
    List<String> wrong = new ArrayList<>();
    listed.forEach(
        (part, value) -> {
          String there = simulated.get(part);
          if (there == null) {
            wrong.add(part + ": in the list alone");
          } else if (!agree(value, there)) {
            wrong.add(part + ": " + value + " in the list, " + there + " in the netlist");
          }
        });
    simulated.keySet().stream()
        .filter(part -> !listed.containsKey(part))
        .forEach(part -> wrong.add(part + ": in the netlist alone"));
    return wrong;
  }

  private static boolean agree(String listed, String simulated) {
    Matcher m = VALUE.matcher(listed);
    if (!m.matches()) {
      return true;
    }
    String suffix = m.group(2).equals("M") ? "Meg" : m.group(2).replace('µ', 'u');
    double value = Bench.number(m.group(1) + suffix);
    return Math.abs(Bench.number(simulated) - value) <= value * 1e-9;
  }

  @Test
  void converterInputsAreDrivenFromAtMostTenKilohmOrByAnAmplifier() throws IOException {
    List<String> drivers = new ArrayList<>();
    for (Path file : files("netlists", ".cir")) {
      for (String line : Files.readAllLines(file)) {
        String[] words = line.split(" ");
        if (words[0].startsWith("R_") && (words[1] + words[2]).matches(".*ADC_[IJV].*")) {
          drivers.add(words[0]);
          assertThat(Bench.number(words[3])).as(line).isLessThanOrEqualTo(10_000);
        } else if (words[words.length - 1].equals("OPAMP") && words[3].startsWith("ADC_")) {
          drivers.add(words[0]);
        }
      }
    }
    assertThat(drivers).hasSize(8);
  }

  @Test
  void theListForPeopleNamesEveryPart() throws IOException {
    String page = Files.readString(HARDWARE.resolve("parts.md"));
    for (String ref : listed().keySet()) {
      assertThat(page).contains("\n| " + ref + " |");
    }
  }

  private static Map<String, String> listed() throws IOException {
    Map<String, String> values = new TreeMap<>();
    List<String> lines = Files.readAllLines(HARDWARE.resolve("parts.csv"));
    for (String line : lines.subList(1, lines.size())) {
      String[] cells = line.split(",(?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)", -1);
      values.put(cells[0], cells[2]);
    }
    assertThat(values).hasSize(lines.size() - 1);
    return values;
  }

  private static Map<String, String> drawn() throws IOException {
    Map<String, String> values = new TreeMap<>();
    for (Path file : files("drawings", ".svg")) {
      Matcher m = DRAWN.matcher(Files.readString(file));
      while (m.find()) {
        assertThat(values.put(m.group(1), m.group(2))).as("%s drawn twice", m.group(1)).isNull();
      }
    }
    return values;
  }

  private static List<Path> files(String folder, String ending) throws IOException {
    try (Stream<Path> all = Files.list(HARDWARE.resolve(folder))) {
      List<Path> found = all.filter(f -> f.toString().endsWith(ending)).sorted().toList();
      assertThat(found).hasSizeGreaterThan(8);
      return found;
    }
  }
}
