package firstamp.study;

import firstamp.account.Comparison;
import firstamp.account.FigureList;
import firstamp.account.Verdict;
import firstamp.analysis.figures.Evidence;
import firstamp.analysis.figures.SupplyCalculation;
import firstamp.log.LogException;
import firstamp.log.PowerUpEntry;
import firstamp.log.PowerUpHeader;
import firstamp.log.PowerUpReader;
import firstamp.model.ClipMove;
import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.model.ProbeEvent;
import firstamp.model.Summary;
import firstamp.model.Trip;
import firstamp.model.samples.Capture;
import firstamp.model.samples.Scaling;
import firstamp.pipeline.Chain;
import firstamp.pipeline.ChainListener;
import firstamp.sheet.Defaults;
import firstamp.sheet.SheetException;
import firstamp.sheet.SheetReader;
import java.util.ArrayList;
import java.util.List;

/**
 * All that a stored power-up says: its figures, its verdict, its marks, its trip. The command line,
 * the window and the report take their numbers from here.
 *
 * <p>Figures and verdict are worked out again from the stored stream by the chain that ran live, so
 * a power-up that was cut short has them too.
 *
 * @param entry as the list shows it
 * @param header what was known at its begin
 * @param sheet effective
 * @param summary the replay's; equal to the stored one but for {@code replay}
 * @param evidence collected
 * @param verdict sentences
 * @param marks in their order
 * @param told what the person has told about it
 * @param trip the probe's account, null = it did not trip
 * @param capture around the trip, null = none or not complete
 * @param scaling of the conversions
 */
public record PowerUpStudy(
    PowerUpEntry entry,
    PowerUpHeader header,
    JobSheet sheet,
    Summary summary,
    Evidence evidence,
    Verdict verdict,
    List<Mark> marks,
    List<Said> said,
    List<ProbeEvent.Told> told,
    Trip trip,
    Capture capture,
    Scaling scaling) {

  /** The sheet says the leakage at this temperature. */
  private static final double LEAKAGE_CELSIUS = 20;

  /** Copies the list. */
  public PowerUpStudy {
    marks = List.copyOf(marks);
    told = List.copyOf(told);
  }

  /**
   * A note with its time.
   *
   * @param atMs since closing
   * @param text of the person; may be null
   */
  public record Mark(double atMs, String text) {}

  /**
   * What was done to the set, with its time.
   *
   * @param atMs since closing
   * @param what was done
   */
  public record Said(double atMs, Happening what) {}

  /** Whether a clip was moved along the signal path, or a contact worked. */
  public boolean searched() {
    return said.stream().anyMatch(one -> one.what() instanceof ClipMove);
  }

  /**
   * Reads the whole stream of a power-up; takes about a second per ten minutes of a raw stream.
   *
   * @throws LogException it cannot be read
   * @throws SheetException the stored sheet is none
   */
  public static PowerUpStudy of(PowerUpReader reader) throws LogException, SheetException {
    PowerUpHeader header = reader.header();
    String name = "stored sheet of power-up " + reader.entry().number();
    JobSheet sheet = Defaults.refill(SheetReader.parse(name, header.effectiveSheetJson()).sheet());
    List<Mark> marks = new ArrayList<>();
    List<Said> said = new ArrayList<>();
    List<ProbeEvent.Told> told = new ArrayList<>();
    ChainListener listener =
        new ChainListener() {
          @Override
          public void mark(String text, double atMs) {
            marks.add(new Mark(atMs, text));
          }

          @Override
          public void happened(Happening what, double atMs) {
            said.add(new Said(atMs, what));
          }

          @Override
          public void told(ProbeEvent.Told event, double atMs) {
            told.add(event);
          }
        };
    ReplayPowerUp replay = new ReplayPowerUp(reader, sheet, listener, micros -> true);
    List<Chain> chains = new ArrayList<>();
    replay.whenChainIsThere(chains::add);
    Summary summary = replay.run();
    Chain chain = chains.get(0);
    Evidence evidence = chain.figures().evidence();
    return new PowerUpStudy(
        reader.entry(),
        header,
        sheet,
        summary,
        evidence,
        Verdict.of(sheet, summary, evidence),
        marks,
        said,
        told,
        chain.trip(),
        chain.capture(),
        chain.scaling());
  }

  /** The figures as one list. */
  public FigureList figures() {
    return FigureList.of(evidence);
  }

  /** What changed from an earlier power-up to this one. */
  public Comparison against(PowerUpStudy earlier) {
    return Comparison.of(
        earlier.evidence,
        evidence,
        ProbeIdentity.of(earlier.header, header).isOne(),
        leakageChangeA(earlier));
  }

  /** How much more the germanium parts of the set leak in this room than in the earlier one. */
  private Double leakageChangeA(PowerUpStudy earlier) {
    Double leakageA = sheet.set().leakageA();
    Double then = earlier.header.roomCelsius();
    Double now = header.roomCelsius();
    if (leakageA == null || then == null || now == null) {
      return null;
    }
    return SupplyCalculation.germaniumLeakageA(leakageA, LEAKAGE_CELSIUS, now)
        - SupplyCalculation.germaniumLeakageA(leakageA, LEAKAGE_CELSIUS, then);
  }
}
