package firstamp.app;

import firstamp.locate.SheetPath;
import firstamp.locate.wire.TriedWire;
import firstamp.locate.wire.WireCase;
import firstamp.locate.wire.WireFile;
import firstamp.locate.wire.WireStep;
import firstamp.log.BenchLog;
import firstamp.model.JobSheet;
import firstamp.study.PowerUpStudy;
import firstamp.study.TrialJudge;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Keeps the wires of unknown place of each set in a file beside the bench log. */
public final class WireShelf implements TrialKeeping {
  private final Desk desk;
  private final Path log;
  private volatile Path file;

  public WireShelf(Desk desk, Path log) {
    this.desk = desk;
    this.log = log;
  }

  /**
   * The wires of a set: as they were kept, else as its sheet names them.
   *
   * @throws IllegalArgumentException the file is none of ours, or the sheet names no wire
   */
  public WireCase of(JobSheet sheet) throws IOException {
    file = fileOf(desk, sheet.set().name());
    WireCase kept = kept(desk, sheet.set().name());
    return kept != null ? kept : SheetPath.wires(sheet);
  }

  private static Path fileOf(Desk desk, String setName) {
    return desk.folder().resolve("wires").resolve(SheetShelf.stem(setName) + ".json");
  }

  /**
   * The wires of a set as they were kept; null where nothing was done about them yet.
   *
   * @throws IllegalArgumentException the file is none of ours
   */
  static WireCase kept(Desk desk, String setName) throws IOException {
    Path file = fileOf(desk, setName);
    return Files.exists(file) ? WireFile.read(Files.readString(file)) : null;
  }

  /** Writes beside and moves, so that a full disk leaves what was there. */
  @Override
  public void keep(WireCase wires) throws IOException {
    Files.createDirectories(file.getParent());
    Path beside = file.resolveSibling(file.getFileName() + ".new");
    Files.writeString(beside, WireFile.write(wires));
    Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
  }

  @Override
  public WireStep.Trial judge(WireCase wires, String wire, String place) throws Exception {
    BenchLog open = BenchLog.openForReading(log, desk.time());
    PowerUpStudy trial = PowerUpStudy.of(open.find("last"));
    return TrialJudge.judge(open, trial, wires, new TriedWire(wire, place)).step();
  }

  @Override
  public long epochMs() {
    return desk.time().epochMillis();
  }
}
