package firstamp.hardware;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What lies in the folder is what the generator writes from parts and sheets. */
@ToolCondition.Needs("python3")
class GeneratorTest {
  @TempDir Path folder;

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
