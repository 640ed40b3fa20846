package firstamp.emulate;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.emulate.box.Box;
import firstamp.emulate.box.BoxKind;
import firstamp.emulate.box.BoxText;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * The drawn boxes that come with the simulated chip are those of the emulated probe. With {@code
 * -Dfirstamp.writeVectors=true} the file is written again.
 */
final class BoxVectorsTest {
  private static final Path FILE = Path.of("..", "firmware-protocol", "vectors", "boxes.txt");
  private static final int BOXES = 16;

  @Test
  void theSimulatedChipHasTheSameBoxes() throws Exception {
    List<String> lines = new ArrayList<>();
    for (long seed = 1; seed <= BOXES; seed++) {
      lines.add("{" + BoxText.members(Box.of(BoxKind.SOLDERED, seed)) + "}");
    }
    if (Boolean.getBoolean("firstamp.writeVectors")) {
      Files.write(FILE, lines);
    }
    assertThat(Files.readAllLines(FILE)).isEqualTo(lines);
  }
}
