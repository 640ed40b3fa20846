package firstamp.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class HomeFolderTest {
  private final HomeFolder home = new HomeFolder(Path.of("/home/tervane"));

  @Test
  void writesTheOwnFolderShortAndReadsItBack() {
    Path log = Path.of("/home/tervane/firstamp/bench.db");
    assertThat(home.shown(log)).isEqualTo(Path.of("~", "firstamp", "bench.db").toString());
    assertThat(home.typed(" " + home.shown(log) + " ")).isEqualTo(log);
  }

  @Test
  void leavesOtherPathsAsTheyAre() {
    Path other = Path.of("/home/tervane2/bench.db");
    assertThat(home.shown(other)).isEqualTo(other.toString());
    assertThat(home.typed("/home/~/report.html")).isEqualTo(Path.of("/home/~/report.html"));
    assertThat(home.typed("~")).isEqualTo(Path.of("~"));
  }
}
