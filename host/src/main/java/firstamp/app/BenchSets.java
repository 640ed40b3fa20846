package firstamp.app;

import firstamp.locate.wire.WireCase;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpEntry;
import firstamp.log.SetNotes;
import firstamp.model.ProbeEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;

/** The sets of a bench as its logs and the files beside them keep them. Reads from disk. */
public final class BenchSets {
  private final Desk desk;

  public BenchSets(Desk desk) {
    this.desk = desk;
  }

  /**
   * All sets.
   *
   * @param emulatedName what the invented ones are called
   */
  public List<SetEntry> list(String emulatedName) throws LogException, IOException {
    BenchLog log = log(desk.log());
    List<SetEntry> sets = new ArrayList<>();
    for (SetEntry set : found(log, emulatedName)) {
      sets.add(set.kind() == SetEntry.Kind.REAL ? set.with(job(log, set)) : set);
    }
    return sets;
  }

  /** A log for reading, checked once for all that is asked of it; null = there is none yet. */
  private BenchLog log(Path file) throws LogException {
    return Files.exists(file) ? BenchLog.openForReading(file, desk.time()) : null;
  }

  /** A wires' file that cannot be read says nothing here; the wires' page says why. */
  private JobState job(BenchLog log, SetEntry set) throws LogException, IOException {
    SetNotes notes =
        log == null ? new SetNotes(List.of(), List.of()) : SetNotes.of(log, set.name());
    List<ProbeEvent> events =
        set.powerUps().isEmpty()
            ? List.of()
            : log.find(Long.toString(set.powerUps().get(0).number())).events();
    WireCase wires;
    try {
      wires = WireShelf.kept(desk, set.name());
    } catch (IllegalArgumentException damaged) {
      wires = null;
    }
    return JobState.of(set.powerUps(), events, notes, wires);
  }

  private List<SetEntry> found(BenchLog log, String emulatedName) throws LogException, IOException {
    return SetList.of(
        desk.log(),
        entries(log),
        sheets(desk.shelf().ready()),
        sheets(desk.shelf().begun()),
        emulatedName,
        desk.emulatedLog(),
        entries(log(desk.emulatedLog())));
  }

  private static List<PowerUpEntry> entries(BenchLog log) throws LogException {
    return log == null ? List.of() : log.list();
  }

  private static List<SetList.Sheet> sheets(SortedMap<Path, String> texts) throws IOException {
    List<SetList.Sheet> sheets = new ArrayList<>();
    for (Map.Entry<Path, String> text : texts.entrySet()) {
      String name = SheetEntries.nameIn(text.getValue());
      String file = text.getKey().getFileName().toString();
      sheets.add(
          new SetList.Sheet(
              name == null ? file : name,
              text.getValue(),
              SheetShelf.writtenEpochMs(text.getKey())));
    }
    return sheets;
  }

  /** The job sheet of a set: the one on the shelf, else that of its latest power-up. */
  public String sheetOf(SetEntry set) throws LogException {
    if (set.sheetJson() != null || set.powerUps().isEmpty()) {
      return set.sheetJson();
    }
    return desk.reader(set.log(), set.powerUps().get(0).number()).header().sheetJson();
  }
}
