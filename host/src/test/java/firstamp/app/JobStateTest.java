package firstamp.app;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.log.BenchLog;
import firstamp.log.SetNotes;
import firstamp.model.ProbeEvent;
import firstamp.window.TestBench;
import firstamp.window.ThinkViews;
import firstamp.window.present.HomePresenter;
import firstamp.window.present.HomePresenterTest;
import firstamp.window.present.JobPresenter;
import firstamp.window.widgets.Tone;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Where a job stands comes from the log and the file of the wires alone. */
class JobStateTest {
  private static final Path LOG = Path.of("bench.db");

  private final JobPresenter english = new JobPresenter(new Words(Locale.ENGLISH));
  private final JobPresenter german = new JobPresenter(new Words(Locale.GERMAN));

  private static JobState marked(ProbeEvent... events) {
    return JobState.of(
        List.of(),
        List.of(events),
        new SetNotes(List.of(), List.of()),
        ThinkViews.wires("screened-lead", 0));
  }

  @Test
  void theLastMarkThatNamesAStateSaysIt() {
    JobState waits =
        marked(
            new ProbeEvent.Marked(1, "done"),
            new ProbeEvent.Marked(2, ""),
            new ProbeEvent.Noted(9, 2, "Waits for the driver transistor"),
            new ProbeEvent.Marked(3, "the lamp came on"));
    assertThat(english.stated(waits)).isEqualTo("on the shelf, waits for the driver transistor");
    assertThat(german.stated(waits)).isEqualTo("im Regal, wartet auf the driver transistor");
    assertThat(german.stated(marked(new ProbeEvent.Marked(1, "wartet auf Elkos"))))
        .isEqualTo("im Regal, wartet auf Elkos");
    assertThat(english.stated(marked(new ProbeEvent.Marked(1, "waits for"))))
        .as("for what?")
        .isNull();
    assertThat(english.stated(marked(new ProbeEvent.Marked(1, "done with the left channel"))))
        .as("that is no state of the job")
        .isNull();
  }

  @Test
  void countsTheWiresThatWereTriedAndThatHaveTheirPlace() {
    SetNotes none = new SetNotes(List.of(), List.of());
    JobState begun = JobState.of(List.of(), List.of(), none, ThinkViews.wires("screened-lead", 4));
    JobState over = JobState.of(List.of(), List.of(), none, ThinkViews.wires("screened-lead", 10));
    assertThat(begun.wiresTried()).isZero();
    assertThat(begun.wiresPlaced()).isZero();
    assertThat(over.wires()).isEqualTo(begun.wires()).isPositive();
    assertThat(over.wiresTried()).isEqualTo(1);
    assertThat(over.wiresPlaced()).isEqualTo(1);
  }

  @Test
  void theFirstScreenSaysItInItsListAndBesideIt() {
    HomePresenter home =
        new HomePresenter(new Words(Locale.ENGLISH), new Numbers(Locale.ENGLISH), ZoneOffset.UTC);
    SetEntry set =
        new SetEntry(
                "Larch",
                SetEntry.Kind.REAL,
                null,
                null,
                LOG,
                List.of(HomePresenterTest.entry(2, "Larch", "probe box", "tripped", 9)),
                0)
            .with(new JobState(List.of("waits for a fuse"), 3, 2, 1, 4, 2L));
    assertThat(home.set(set).more()).isEqualTo("on the shelf, waits for a fuse");
    assertThat(home.set(set).tone()).isEqualTo(Tone.ALARM);
    assertThat(home.job(set))
        .containsExactly(
            "Job: on the shelf, waits for a fuse",
            "Unknown wires: 3; tried: 2; with their place: 1",
            "Values measured with the supply off: 4",
            "Known good: power-up 2");
    assertThat(home.set(set.with(new JobState(List.of(), 3, 2, 1, 0, null))).more())
        .isEqualTo("Switched itself off; wires: 1 of 3 placed");
  }

  @Test
  void isReadFromTheLogAndTheFileOfTheWires(@TempDir Path folder) throws Exception {
    Desk desk = TestBench.empty(folder);
    TestBench.run(desk.log(), "wire-short", null, true);
    String name = new BenchSets(desk).list("emulated").get(0).name();
    try (BenchLog log = BenchLog.open(desk.log(), desk.time())) {
      log.later(1, new ProbeEvent.Marked(9_000_000, "waits for a fuse"));
      SetNotes.add(
          log, name, new SetNotes.ColdCheck(1, "resistance", "B1", "chassis", 22.0, "ohm", null));
    }
    Path wires = folder.resolve("wires").resolve(SheetShelf.stem(name) + ".json");
    Files.createDirectories(wires.getParent());
    Files.writeString(
        wires, firstamp.locate.wire.WireFile.write(ThinkViews.wires("screened-lead", 10)));
    JobState job = new BenchSets(desk).list("emulated").get(0).job();
    assertThat(english.stated(job)).isEqualTo("on the shelf, waits for a fuse");
    assertThat(job.wiresPlaced()).isEqualTo(1);
    assertThat(job.coldChecks()).isGreaterThanOrEqualTo(1);
    Files.writeString(wires, "no file of ours");
    assertThat(new BenchSets(desk).list("emulated").get(0).job().wires())
        .as("the rest stays")
        .isZero();
  }
}
