package firstamp.window.present;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.ReadySheet;
import firstamp.app.SetEntry;
import firstamp.app.SetList;
import firstamp.log.PowerUpEntry;
import firstamp.log.PowerUpHeader;
import firstamp.window.widgets.Tone;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

public class HomePresenterTest {
  private static final Path LOG = Path.of("bench.db");

  private final HomePresenter presenter =
      new HomePresenter(new Words(Locale.ENGLISH), new Numbers(Locale.ENGLISH), ZoneOffset.UTC);

  public static PowerUpEntry entry(
      long number, String set, String kind, String outcome, double onMs) {
    return new PowerUpEntry(
        number,
        "u" + number,
        "W3 to P7",
        set,
        1000L * number,
        1000L * number + 500,
        PowerUpHeader.Stream.RAW,
        kind,
        outcome != null,
        outcome,
        "time",
        "{\"onMs\":" + onMs + "}",
        false,
        number == 2);
  }

  @Test
  void putsTheSetTouchedLastFirstAndTheEmulatedOnesAtTheEnd() {
    List<SetEntry> sets =
        SetList.of(
            LOG,
            List.of(
                entry(1, "Larch", "probe box", "normal", 100),
                entry(2, "Quandel", "probe box", "tripped", 100),
                entry(3, "Larch", "emulated probe, scenario healthy", "normal", 100),
                entry(4, "Larch", "probe box", "normal", 100)),
            List.of(new SetList.Sheet("Tervane", "{}", 2500)),
            List.of(new SetList.Sheet("Begun", "{}", 9000)),
            "Practice set",
            LOG,
            List.of(entry(3, "Larch", "emulated probe, scenario healthy", "normal", 100)));
    assertThat(sets)
        .extracting(SetEntry::name)
        .containsExactly("Larch", "Tervane", "Quandel", "Begun", "Practice set");
    assertThat(sets.get(0).powerUps()).extracting(PowerUpEntry::number).containsExactly(4L, 1L);
    assertThat(sets.get(4).powerUps()).extracting(PowerUpEntry::number).containsExactly(3L);
  }

  @Test
  void saysHowAPowerUpEndedInTheWordsOfTheBench() {
    assertThat(presenter.powerUp(entry(1, "L", "p", "normal", 100)).main())
        .isEqualTo("Power-up 1: Ran 100 ms, no alarm");
    assertThat(presenter.powerUp(entry(1, "L", "p", "normal", 0)).main())
        .isEqualTo("Power-up 1: not switched on");
    assertThat(presenter.powerUp(entry(1, "L", "p", null, 0)).main())
        .isEqualTo("Power-up 1: stopped early");
    HomePresenter.Row tripped = presenter.powerUp(entry(2, "L", "p", "tripped", 9));
    assertThat(tripped.main()).isEqualTo("Power-up 2: Switched itself off");
    assertThat(tripped.more()).contains("W3 to P7").contains("known good");
    assertThat(tripped.tone()).isEqualTo(Tone.ALARM);
  }

  @Test
  void saysWhatASetIsFedWithAndWhereItSwitchesItselfOff() throws Exception {
    ReadySheet sheet = ReadySheet.of("s", firstamp.emulate.Scenarios.sheetJson("healthy"));
    assertThat(presenter.about(sheet.effective()))
        .containsExactly(
            "Supply 12.0 V, bench supply, probe box: in the supply lead",
            "Switches itself off above 1.00 A; switch-on surge allowed 2.40 A",
            "Rails: B1 8.20 V");
  }
}
