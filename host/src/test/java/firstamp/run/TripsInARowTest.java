package firstamp.run;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.log.PowerUpEntry;
import firstamp.log.PowerUpHeader;
import firstamp.model.Difference;
import firstamp.model.JobSheet;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Trips in a row for one cause, and what they ask for. Common practice at the bench, no source. */
class TripsInARowTest {
  private static final long NOW = 1_790_000_000_000L;
  private static final long MINUTE = 60_000;

  private final List<PowerUpEntry> entries = new ArrayList<>();

  private void powerUp(String set, String outcome, String cause, double onMs, long agoMs) {
    entries.add(
        new PowerUpEntry(
            entries.size() + 1,
            "u" + entries.size(),
            null,
            set,
            NOW - agoMs - 1000,
            NOW - agoMs,
            PowerUpHeader.Stream.RAW,
            "probe",
            true,
            outcome,
            "trip",
            "{\"outcome\":\""
                + outcome
                + "\",\"onMs\":"
                + onMs
                + (cause == null ? "" : ",\"tripCause\":\"" + cause + "\"")
                + "}",
            false,
            false));
  }

  private TripsInARow trips() {
    return TripsInARow.of(entries, "Larch", null, NOW);
  }

  @Test
  void theSameCauseTwiceWantsAProofWhateverIsDifferent() {
    powerUp("Larch", "normal", null, 5000, 60 * MINUTE);
    powerUp("Larch", "tripped", "running", 400, 50 * MINUTE);
    assertThat(trips().count()).isEqualTo(1);
    assertThat(trips().wantsProof(Difference.WIRE)).isFalse();
    assertThat(trips().wantsProof(Difference.NOTHING)).isTrue();
    powerUp("Larch", "tripped", "running", 300, 2 * MINUTE);
    assertThat(trips().count()).isEqualTo(2);
    assertThat(trips().wantsProof(Difference.WIRE)).isTrue();
    assertThat(trips().restS(NOW)).isZero();
  }

  @Test
  void theThirdTimeItRestsTenMinutesFromItsEnd() {
    powerUp("Larch", "tripped", "running", 400, 9 * MINUTE);
    powerUp("Larch", "tripped", "running", 300, 6 * MINUTE);
    powerUp("Larch", "tripped", "running", 300, 4 * MINUTE);
    assertThat(trips().restS(NOW)).isEqualTo(6 * 60);
    assertThat(trips().restS(NOW + 6 * MINUTE - 1)).isEqualTo(1);
    assertThat(trips().restS(NOW + 6 * MINUTE)).isZero();
  }

  @Test
  void anotherCauseAnotherSetAndAGoodRunBreakTheRow() {
    powerUp("Larch", "tripped", "over-voltage", 400, 9 * MINUTE);
    powerUp("Larch", "tripped", "running", 300, 6 * MINUTE);
    assertThat(trips().count()).isEqualTo(1);
    powerUp("Quandel", "normal", null, 3000, 5 * MINUTE);
    powerUp("Larch", "tripped", "running", 300, 4 * MINUTE);
    assertThat(trips().count()).as("another set in between").isEqualTo(2);
    powerUp("Larch", "interrupted", null, 0, 3 * MINUTE);
    assertThat(trips().count()).as("stopped in the countdown: never on").isEqualTo(2);
    powerUp("Larch", "normal", null, 3000, 2 * MINUTE);
    assertThat(trips().count()).isZero();
  }

  @Test
  void aTripThatIsNotInTheLogYetCountsToo() {
    powerUp("Larch", "tripped", "running", 400, 9 * MINUTE);
    assertThat(TripsInARow.of(entries, "Larch", "running", NOW).count()).isEqualTo(2);
    assertThat(TripsInARow.of(entries, "Larch", "i2t", NOW).count()).isEqualTo(1);
  }

  @Test
  void ohmsThatWouldDrawMoreThanTheRunningLimitForbid() throws Exception {
    // 12 V, running limit 1 A; rail B1 8.2 V: 8.2 V / 8.2 ohm = 1 A.
    JobSheet sheet = LoggedRun.sheet("healthy");
    assertThat(TripsInARow.forbids(sheet, 1, 820)).isNull();
    assertThat(TripsInARow.forbids(sheet, 1, 8.3)).isNull();
    assertThat(TripsInARow.forbids(sheet, 1, 4.1)).isEqualTo(2.0);
    assertThat(TripsInARow.forbids(sheet, 0, 6)).isEqualTo(2.0);
    assertThat(TripsInARow.forbids(sheet, 0, 0)).isInfinite();
  }
}
