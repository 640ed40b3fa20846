package firstamp.protocol;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class ChipConditionTest {
  @TempDir Path folder;

  @Test
  void skipsChipTestsWithoutTheFirmwareAndLeavesOthersAlone() {
    List<Path> needed = List.of(folder.resolve("probe.elf"));

    assertThat(ChipCondition.decide(true, needed, false).isDisabled()).isTrue();
    assertThat(ChipCondition.decide(false, needed, false).isDisabled()).isFalse();
  }

  @Test
  void failsWhereTheToolsAreRequired() {
    List<Path> needed = List.of(folder.resolve("probe.elf"));

    assertThatThrownBy(() -> ChipCondition.decide(true, needed, true))
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("probe.elf is not built");
  }

  @Test
  void runsChipTestsOnceTheFirmwareIsBuilt() throws Exception {
    Path elf = Files.createFile(folder.resolve("probe.elf"));

    assertThat(ChipCondition.decide(true, List.of(elf), true).isDisabled()).isFalse();
  }
}
