package firstamp.hardware;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What lies in the folder is what the generator writes from parts and sheets. */
@ToolCondition.Needs("python3")
class GeneratorTest {
  @TempDir Path folder;

  /** Runs the generator beside a parts list of ours; what it says where it refuses. */
  private String refused(List<String> parts) throws Exception {
    Path root = folder.resolve("hardware");
    Files.createDirectories(root.resolve("generator"));
    try (Stream<Path> scripts = Files.list(Path.of("hardware", "generator"))) {
      for (Path script : scripts.filter(each -> each.toString().endsWith(".py")).toList()) {
        Files.copy(script, root.resolve("generator").resolve(script.getFileName()));
      }
    }
    Files.write(root.resolve("parts.csv"), parts);
    Path output = folder.resolve("output.txt");
    Process process =
        new ProcessBuilder(
                "python3",
                "-B",
                root.resolve("generator/draw.py").toString(),
                folder.resolve("made").toString())
            .redirectErrorStream(true)
            .redirectOutput(output.toFile())
            .start();
    assertThat(process.waitFor()).as("exit code").isNotZero();
    return Files.readString(output);
  }

  private static List<String> parts() throws Exception {
    return new ArrayList<>(Files.readAllLines(Path.of("hardware", "parts.csv")));
  }

  @Test
  void aPartThatIsDrawnAndNotListedIsNamed() throws Exception {
    List<String> parts = parts();
    String gone = parts.remove(20);
    assertThat(refused(parts)).contains(gone.substring(0, gone.indexOf(',')));
  }

  @Test
  void aPartThatIsListedAndNotDrawnIsNamed() throws Exception {
    List<String> parts = parts();
    parts.add(parts.get(20).replaceFirst("^[^,]*", "R987"));
    assertThat(refused(parts)).contains("parts.csv and drawings differ").contains("R987");
  }

  @Test
  void aPartThatIsListedTwiceIsRefused() throws Exception {
    List<String> parts = parts();
    parts.add(parts.get(20));
    assertThat(refused(parts)).contains("a reference stands twice in parts.csv");
  }

  @Test
  void committedDrawingsAndNetlistsAreTheGeneratedOnes() throws Exception {
    Path output = folder.resolve("output.txt");
    Process process =
        new ProcessBuilder("python3", "-B", "hardware/generator/draw.py", folder.toString())
            .redirectErrorStream(true)
            .redirectOutput(output.toFile())
            .start();
    assertThat(process.waitFor()).as(Files.readString(output)).isZero();
    int compared = 0;
    for (String part : List.of("drawings", "netlists")) {
      List<Path> names;
      try (Stream<Path> files = Files.list(Path.of("hardware", part))) {
        names = files.map(Path::getFileName).sorted().toList();
      }
      try (Stream<Path> files = Files.list(folder.resolve(part))) {
        assertThat(files.map(Path::getFileName).sorted().toList()).isEqualTo(names);
      }
      for (Path name : names) {
        assertThat(Path.of("hardware", part).resolve(name))
            .hasSameTextualContentAs(folder.resolve(part).resolve(name));
        compared++;
      }
    }
    assertThat(Path.of("hardware/parts.md")).hasSameTextualContentAs(folder.resolve("parts.md"));
    assertThat(compared).isGreaterThan(18);
  }
}
