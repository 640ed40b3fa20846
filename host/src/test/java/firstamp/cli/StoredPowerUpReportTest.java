package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** Stored power-ups shown and put on a page. */
final class StoredPowerUpReportTest extends FourPowerUps {
  @Test
  void peopleReadTheSameFiguresEverywhere() throws IOException {
    String compared = String.join("\n", run("compare", "1", "3").out());
    Path page = folder.resolve("same.html");
    assertThat(run("report", "1", "3", "--to", page.toString()).exitCode()).isZero();
    String html = Files.readString(page);
    JsonNode summary = run("show", "3", "--json").summary();
    String amps =
        firstamp.account.FigureList.value(
            summary.path("supply").path("inrushPeakA").asDouble(), "A");
    assertThat(compared).contains("Inrush current, peak: ").contains("then " + amps);
    assertThat(html).contains(">" + amps + "<").contains("after the wire went back");
    assertThat(compared).contains("power-up 3").contains("\"after the wire went back\"");
  }

  @Test
  void showEndsWithTheVerdict() {
    CommandRunner.Result result = run("show", "2");
    assertThat(result.exitCode()).isZero();
    int at = result.out().indexOf("What it showed:");
    assertThat(at).isPositive();
    String verdict = String.join("\n", result.out().subList(at, result.out().size()));
    assertThat(verdict)
        .contains("it switched itself off after 1.2 s")
        .doesNotContain("no fault")
        .doesNotContain("normal");
  }

  @Test
  void anExistingFileOrLinkIsNotWrittenOver() throws IOException {
    Path precious = folder.resolve("precious.txt");
    Files.writeString(precious, "precious");
    CommandRunner.Result refused = run("report", "1", "--to", precious.toString());
    assertThat(refused.exitCode()).isEqualTo(73);
    assertThat(refused.err()).contains("precious.txt").contains("--force");
    assertThat(Files.readString(precious)).isEqualTo("precious");
    Path link = folder.resolve("link.html");
    Files.createSymbolicLink(link, precious);
    assertThat(run("report", "1", "--to", link.toString()).exitCode()).isEqualTo(73);
    Path nowhere = folder.resolve("nowhere.html");
    Files.createSymbolicLink(nowhere, folder.resolve("not-there.html"));
    assertThat(run("report", "1", "--to", nowhere.toString()).exitCode()).isEqualTo(73);
    assertThat(folder.resolve("not-there.html")).doesNotExist();
    assertThat(run("report", "1", "--to", link.toString(), "--force").exitCode()).isZero();
    assertThat(Files.readString(precious)).isEqualTo("precious");
    assertThat(Files.isSymbolicLink(link)).isFalse();
    assertThat(Files.readString(link)).startsWith("<!DOCTYPE html>");
  }

  @Test
  void missingThingsHaveTheirExitCodes() {
    assertThat(run("report", "1").exitCode()).isEqualTo(64);
    assertThat(run("compare", "1").exitCode()).isEqualTo(64);
    assertThat(run("compare", "1", "99").exitCode()).isEqualTo(66);
    CommandRunner.Result noFolder =
        run("report", "1", "--to", folder.resolve("no/where.html").toString());
    assertThat(noFolder.exitCode()).isEqualTo(73);
    assertThat(noFolder.err()).contains("folder");
  }

  @Test
  void hostileNamesOfAStoredPowerUpStayTexts() throws IOException {
    Path page = folder.resolve("hostile.html");
    CommandRunner.Result result = run("report", "1", "4", "--to", page.toString());
    assertThat(result.exitCode()).as(result.err()).isZero();
    String html = Files.readString(page);
    assertThat(html)
        .contains("&lt;/title&gt;&lt;script&gt;")
        .doesNotContain("<script")
        .doesNotContain("<img")
        .doesNotContain("\u202e")
        .contains("Measured with the supply off")
        .contains("<td>open</td>")
        .contains("Wires tried")
        .contains("<td>verdict better</td>");
  }

  /** One place for all numbers: every figure of show is in the report, word for word. */
  @Test
  void showAndReportPrintTheSameFigures() throws IOException {
    Path page = folder.resolve("all.html");
    assertThat(run("report", "3", "--to", page.toString()).exitCode()).isZero();
    String html = Files.readString(page).replaceAll("<[^>]+>", "|").replaceAll("[|\n]+", "|");
    int seen = 0;
    for (String line : run("show", "3").out()) {
      int colon = line.lastIndexOf(": ");
      boolean figure = line.startsWith("  ") && !line.startsWith("  -") && colon > 0;
      String name = figure ? line.substring(2, colon) : "";
      String value = figure ? line.substring(colon + 2).split(" \u00b1 ")[0] : "";
      if (html.contains("|" + name + "|")) {
        seen++;
        assertThat(html).contains("|" + name + "|" + value + "|");
      }
    }
    assertThat(seen).isGreaterThan(20);
  }

  @Test
  void thePageHoldsSheetCautionsCaptureAndUncertainty() throws IOException {
    Path page = folder.resolve("whole.html");
    assertThat(run("report", "2", "--to", page.toString()).exitCode()).isZero();
    String html = Files.readString(page);
    assertThat(html)
        .contains("60 V dc / 30 V rms")
        .contains("isolation transformer")
        .contains("Local electrical codes")
        .contains("supply.nominalV")
        .contains("limit crossed")
        .contains("running limit")
        .contains("Uncertainty")
        .contains("emulated probe");
  }
}
