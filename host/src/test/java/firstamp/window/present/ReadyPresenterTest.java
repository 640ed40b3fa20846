package firstamp.window.present;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.ReadySheet;
import firstamp.emulate.Scenarios;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class ReadyPresenterTest {
  /** A lone "window" in the supply's line says nothing about what is watched. */
  @Test
  void namesTheSupplysWindow() throws Exception {
    ReadySheet sheet = ReadySheet.of("healthy", Scenarios.sheetJson("healthy"));
    for (Locale locale : Words.LANGUAGES) {
      Words words = new Words(locale);
      List<String> lines =
          new ReadyPresenter(words, new Numbers(locale)).watched(sheet.effective());
      assertThat(lines.get(0)).contains(words.get("watch.supply.rail-window"));
      assertThat(List.of(lines.get(0).split(", "))).doesNotContain(words.get("watch.rail-window"));
      assertThat(lines.get(1)).contains(words.get("watch.rail-window"));
    }
  }
}
