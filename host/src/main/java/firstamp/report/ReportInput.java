package firstamp.report;

import firstamp.account.Comparison;
import firstamp.account.Verdict;
import firstamp.analysis.figures.Evidence;
import firstamp.log.SetNotes;
import firstamp.model.JobSheet;
import firstamp.model.Summary;
import firstamp.model.Trip;
import firstamp.model.samples.Capture;
import firstamp.model.samples.Scaling;
import firstamp.study.PowerUpStudy;
import firstamp.study.ToldWords;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;

/**
 * All that a report shows.
 *
 * @param sheet effective
 * @param summary as stored
 * @param evidence collected in it or in its replay
 * @param verdict sentences
 * @param found what was found about a lost signal or a wire of unknown place, as sentences
 * @param started date and time in words; may be null
 * @param label given by the person; may be null
 * @param marks notes with times
 * @param told what the person entered about it, as sentences
 * @param tripPicture what the probe took around its trip; null if it did not trip
 * @param tables cold checks, trials and whatever else is kept, as text
 * @param before what it is compared with; null = nothing
 */
public record ReportInput(
    JobSheet sheet,
    Summary summary,
    Evidence evidence,
    Verdict verdict,
    List<String> found,
    String started,
    String label,
    List<Mark> marks,
    List<String> told,
    TripPicture tripPicture,
    List<Table> tables,
    Before before) {

  /** Copies the lists. */
  public ReportInput {
    found = List.copyOf(found);
    marks = List.copyOf(marks);
    told = List.copyOf(told);
    tables = List.copyOf(tables);
  }

  /**
   * A stored power-up.
   *
   * @param before the one it is compared with, null = none
   * @param notes kept about the set
   * @param locale language of the texts that are made here
   * @param thoughts about a lost signal and wires of unknown place
   */
  public static ReportInput of(
      PowerUpStudy now, PowerUpStudy before, SetNotes notes, Thoughts thoughts, Locale locale) {
    ReportWords words = new ReportWords(locale);
    TripPicture picture =
        now.trip() == null || now.capture() == null
            ? null
            : new TripPicture(now.trip(), now.capture(), now.scaling());
    return new ReportInput(
        now.sheet(),
        now.summary(),
        now.evidence(),
        now.verdict(),
        thoughts.sentences(),
        StoredTexts.started(now.entry()),
        now.entry().label(),
        now.marks().stream().map(mark -> new Mark(mark.atMs(), mark.text())).toList(),
        new ToldWords(locale, ZoneId.systemDefault()).lines(now.told()),
        picture,
        StoredTexts.tables(now, notes, thoughts.wireStory(), words),
        before == null
            ? null
            : new Before(
                StoredTexts.name(before.entry(), words), before.evidence(), now.against(before)));
  }

  /**
   * What was thought about the set.
   *
   * @param sentences that belong to the verdict
   * @param wireStory what was done about wires of unknown place, one line a step
   */
  public record Thoughts(List<String> sentences, List<String> wireStory) {
    /** Nobody searched and no wire was in doubt. */
    public static final Thoughts NONE = new Thoughts(List.of(), List.of());
  }

  /**
   * A note.
   *
   * @param atMs since closing
   * @param text of the person
   */
  public record Mark(double atMs, String text) {}

  /**
   * A trip with its conversions.
   *
   * @param trip the probe's account
   * @param capture what it took around it
   * @param scaling of that power-up
   */
  public record TripPicture(Trip trip, Capture capture, Scaling scaling) {}

  /**
   * A table of texts.
   *
   * @param title heading
   * @param columns head of each column
   * @param rows texts
   */
  public record Table(String title, List<String> columns, List<List<String>> rows) {}

  /**
   * The power-up before.
   *
   * @param name how it is called in the heading
   * @param evidence its figures and course
   * @param comparison from it to this one
   */
  public record Before(String name, Evidence evidence, Comparison comparison) {}
}
