package firstamp.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PortLockTest {
  @TempDir Path folder;

  @Test
  void refusesASecondHostOnOnePortAndNamesTheFirst() throws Exception {
    try (PortLock first = PortLock.take(folder, "/dev/ttyX0")) {
      assertThat(first).isNotNull();
      assertThatThrownBy(() -> PortLock.take(folder, "/dev/ttyX0"))
          .isInstanceOfSatisfying(
              PortException.class, e -> assertThat(e.kind()).isEqualTo(PortException.Kind.BUSY))
          .hasMessageContaining("/dev/ttyX0 is in use by another Firstamp")
          .hasMessageContaining("PID " + ProcessHandle.current().pid());
      PortLock.take(folder, "/dev/ttyX1").close();
    }
    PortLock.take(folder, "/dev/ttyX0").close();
  }

  @Test
  void refusesWhatIsNoPortWithTheRemedy() throws Exception {
    assertThatThrownBy(() -> PortAccess.check("/dev/no-such-port-here"))
        .isInstanceOfSatisfying(
            PortException.class, e -> assertThat(e.kind()).isEqualTo(PortException.Kind.ABSENT))
        .hasMessageContaining("/dev/no-such-port-here")
        .hasMessageContaining("firstamp ports");
    Path file = Files.createFile(folder.resolve("a-file"));
    assertThatThrownBy(() -> PortAccess.check(file.toString()))
        .isInstanceOfSatisfying(
            PortException.class, e -> assertThat(e.kind()).isEqualTo(PortException.Kind.UNUSABLE));
  }
}
