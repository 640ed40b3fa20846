package firstamp.study;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.locate.signal.Observation;
import firstamp.log.BenchLog;
import firstamp.log.PowerUpReader;
import firstamp.model.Happening;
import firstamp.model.TimeSource;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * A power-up in which a version of before wrote a whole search for a lost signal into marks, kept
 * as it was written. The sentences are those that the same version printed.
 */
final class OldMarksTest {
  private static final Path LOG =
      Path.of("src", "test", "resources", "logs", "search-in-marks.firstamp");

  private static PowerUpReader reader() throws Exception {
    return BenchLog.openForReading(LOG, TimeSource.system()).find("last");
  }

  @Test
  void aSearchThatWasWrittenIntoMarksComesToTheSame() throws Exception {
    SearchState state = SignalSearch.of(reader());
    List<Observation> taken = state.search().observations();
    assertThat(taken)
        .extracting(seen -> seen.getClass().getSimpleName())
        .containsExactly("Heard", "Heard", "Level", "Level", "Strokes");
    assertThat(taken.get(2).toString()).contains("driver out").contains("record");
    assertThat(((Observation.Level) taken.get(2)).levelDbv())
        .isCloseTo(-4, org.assertj.core.api.Assertions.within(0.05));
    assertThat(((Observation.Strokes) taken.get(4)).joint())
        .isEqualTo("muting contact of the earphone jack");
    assertThat(state.search().answer().sentence()).contains("muting contact of the earphone jack");
    assertThat(state.search().answer().remarks().get(0).english())
        .contains("25.6 dB between strokes. Dirty contact");
  }

  @Test
  void theMarksStayWhatThePersonReads() throws Exception {
    PowerUpStudy study = PowerUpStudy.of(reader());
    assertThat(study.marks()).hasSize(12);
    assertThat(study.marks().get(2).text())
        .isEqualTo("clip on driver out, switched to record, meter input");
    assertThat(study.said()).hasSize(12);
    assertThat(study.searched()).isTrue();
    assertThat(study.summary().outcome()).isEqualTo("normal");
    assertThat(study.said()).noneMatch(said -> said.what() instanceof Happening.SetChanged);
    assertThat(reader().entry().rulesVersion()).isEqualTo(1);
  }
}
