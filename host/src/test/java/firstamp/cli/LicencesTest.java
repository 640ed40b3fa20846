package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Every jar that is shipped stands on the page of licences, and the program prints that page. */
class LicencesTest {
  private static final Path PAGE = Path.of("docs", "licences.md");

  /** Names without version of the jars of the runtime class path, as the build wrote them down. */
  private static List<String> shipped() throws Exception {
    List<String> names = new ArrayList<>();
    for (String entry :
        Files.readString(Path.of("target", "runtime-classpath.txt"))
            .strip()
            .split(File.pathSeparator)) {
      String file = Path.of(entry).getFileName().toString();
      if (file.endsWith(".jar")) {
        names.add(file.replaceAll("-[0-9][0-9.]*[.]jar$", ""));
      }
    }
    return names;
  }

  @Test
  void everyShippedJarIsListedWithItsLicence() throws Exception {
    String page = Files.readString(PAGE);
    List<String> rows = page.lines().filter(line -> line.startsWith("| `")).toList();
    assertThat(shipped()).hasSizeGreaterThan(15).contains("jfreechart", "jSerialComm", "slf4j-nop");
    for (String jar : shipped()) {
      assertThat(rows)
          .as(jar)
          .anyMatch(
              row ->
                  row.contains("`" + jar + "`")
                      && row.split("[|]")[2].matches(" (Apache-2.0|LGPL|MIT) "));
    }
    assertThat(page).contains("used here under Apache-2.0").contains("GPL-3.0 as a whole");
  }

  @Test
  void theProgramPrintsThePage() throws Exception {
    CommandRunner.Result result = CommandRunner.run("--licences");
    assertThat(result.exitCode()).isZero();
    assertThat(String.join("\n", result.out())).isEqualTo(Files.readString(PAGE).strip());
  }
}
