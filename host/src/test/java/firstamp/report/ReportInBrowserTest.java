package firstamp.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The report as a browser loads it: no error, no request, the texts there, something drawn. */
class ReportInBrowserTest {
  /** Would fetch from a host that cannot exist, and write to the console, if anything let it. */
  private static final String HOSTILE =
      "</title><script>console.error('let in')</script>"
          + "<img src=http://marker.invalid/x onerror=\"console.error('let in')\">"
          + "<link rel=stylesheet href=http://marker.invalid/y>"
          + "<style>body{background:url(http://marker.invalid/z)}</style>\"'&\u202e\u0000";

  @TempDir private Path folder;

  @BeforeEach
  void browser() {
    Browser.assume();
  }

  private Browser.Loaded load(String page) throws IOException, InterruptedException {
    Path file = Files.writeString(folder.resolve("page.html"), page);
    return Browser.load(folder, file);
  }

  @Test
  void loadsWithoutErrorsAndAsksForNothing() throws Exception {
    String name = "Larch D2 dictation unit (invented)";
    Browser.Loaded loaded =
        load(HtmlReport.page(HtmlReportTest.input(HtmlReportTest.sheet(name, "B1"), "x", true)));
    assertThat(loaded.console()).isEmpty();
    assertThat(loaded.requests()).isNotEmpty().doesNotContain("marker.invalid");
    assertThat(loaded.dom())
        .contains("<h1>" + name + "</h1>")
        .contains("Result")
        .contains("118 mA")
        .contains("limit crossed")
        .contains("Local electrical codes and licensed practice come first");
    BufferedImage picture = ImageIO.read(new ByteArrayInputStream(loaded.screenshot()));
    assertThat(picture.getWidth()).isEqualTo(900);
    // Ink on paper: neither blank nor one colour.
    Set<Integer> colours = new HashSet<>();
    int dark = 0;
    for (int y = 0; y < picture.getHeight(); y += 3) {
      for (int x = 0; x < picture.getWidth(); x += 3) {
        int rgb = picture.getRGB(x, y) & 0xFFFFFF;
        colours.add(rgb);
        dark += (rgb >> 8 & 0xFF) < 0x60 ? 1 : 0;
      }
    }
    assertThat(colours).hasSizeGreaterThan(20);
    assertThat(dark).isGreaterThan(500);
  }

  @Test
  void hostileTextsInEveryFieldStayTexts() throws Exception {
    Browser.Loaded loaded =
        load(
            HtmlReport.page(
                HtmlReportTest.input(HtmlReportTest.sheet(HOSTILE, HOSTILE), HOSTILE, true)));
    assertThat(loaded.console()).isEmpty();
    assertThat(loaded.requests()).doesNotContain("marker.invalid");
    assertThat(loaded.dom()).doesNotContain("<script").doesNotContain("<img").contains("&lt;img");
  }

  /** The check itself: a page that lets the same text in is seen to ask and to complain. */
  @Test
  void aPageThatLetsItInIsCaught() throws Exception {
    Browser.Loaded loaded =
        load(
            "<!DOCTYPE html><html><head><title>" + HOSTILE + "</title></head><body></body></html>");
    assertThat(loaded.console()).anyMatch(line -> line.contains("let in"));
    assertThat(loaded.requests()).contains("marker.invalid");
  }
}
