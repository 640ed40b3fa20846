package firstamp.hardware;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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
    assertThat(simulated.keySet()).isEqualTo(listed.keySet());
    int compared = 0;
    for (Map.Entry<String, String> part : listed.entrySet()) {
      Matcher m = Pattern.compile("([0-9.]+) ([mkMµnp]?)[ΩFH]").matcher(part.getValue());
      if (m.matches()) {
        String suffix = m.group(2).equals("M") ? "Meg" : m.group(2).replace('µ', 'u');
        double value = Bench.number(m.group(1) + suffix);
        assertThat(Bench.number(simulated.get(part.getKey())))
            .as(part.getKey())
            .isCloseTo(value, within(value * 1e-9));
        compared++;
      }
    }
    assertThat(compared).isGreaterThan(120);
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
