package firstamp.window.present;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.app.DeskSettings;
import firstamp.log.PowerUpEntry;
import firstamp.log.PowerUpHeader;
import firstamp.window.present.Reminders.What;
import java.util.List;
import org.junit.jupiter.api.Test;

/** With a clock set by hand. */
class RemindersTest {
  private static final long DAY_MS = 24L * 3600 * 1000;
  private static final long NOW_MS = 400 * DAY_MS;

  static PowerUpEntry tripped(long startedMs, double amps) {
    String summary =
        "{\"outcome\":\"tripped\",\"onMs\":100,\"alarms\":[{\"rule\":\"over-current\",\"value\":"
            + amps
            + ",\"unit\":\"A\"},{\"rule\":\"short\",\"value\":90,\"unit\":\"ohm\"}]}";
    return new PowerUpEntry(
        1,
        "u",
        null,
        "Larch",
        startedMs,
        startedMs + 1000,
        PowerUpHeader.Stream.RAW,
        "probe box on a line",
        true,
        "tripped",
        "trip",
        summary,
        false,
        false);
  }

  private static DeskSettings tried(Long cutMs, Long calibratedMs, Long fromMs) {
    return new DeskSettings(null, null, null, null, null, cutMs, calibratedMs, fromMs, null);
  }

  private static What due(DeskSettings settings, PowerUpEntry... entries) {
    return Reminders.due(settings, List.of(entries), NOW_MS).what();
  }

  @Test
  void offersTheTrialAfterBuilding() {
    assertThat(due(DeskSettings.none())).isEqualTo(What.BUILT);
  }

  @Test
  void offersItAMonthAfterTheLastTrialAndNotBefore() {
    assertThat(due(tried(NOW_MS - 30 * DAY_MS, 1L, null))).isEqualTo(What.MONTH);
    assertThat(due(tried(NOW_MS - 30 * DAY_MS + 1, 1L, null))).isEqualTo(What.NOTHING);
  }

  @Test
  void offersItAfterATripAboveThreeAmpereThatNoTrialFollowed() {
    DeskSettings settings = tried(NOW_MS - 2 * DAY_MS, 1L, null);
    Reminders.Offer offer = Reminders.due(settings, List.of(tripped(NOW_MS - DAY_MS, 8.1)), NOW_MS);
    assertThat(offer.what()).isEqualTo(What.AFTER_TRIP);
    assertThat(offer.amps()).isEqualTo(8.1);
    assertThat(due(settings, tripped(NOW_MS - DAY_MS, 3.0))).isEqualTo(What.NOTHING);
    assertThat(due(settings, tripped(NOW_MS - 3 * DAY_MS, 8.1))).isEqualTo(What.NOTHING);
  }

  @Test
  void offersCalibrationLast() {
    assertThat(due(tried(NOW_MS - DAY_MS, null, null))).isEqualTo(What.CALIBRATE);
  }

  @Test
  void laterHoldsForADayButNotForATripThatCameSince() {
    DeskSettings later = tried(null, null, NOW_MS + DAY_MS / 2);
    assertThat(due(later)).isEqualTo(What.NOTHING);
    assertThat(due(later, tripped(NOW_MS - DAY_MS, 8))).isEqualTo(What.NOTHING);
    assertThat(due(later, tripped(NOW_MS - DAY_MS / 4, 8))).isEqualTo(What.AFTER_TRIP);
    assertThat(due(tried(null, null, NOW_MS))).isEqualTo(What.BUILT);
  }
}
