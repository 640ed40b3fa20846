package firstamp.study;

import firstamp.account.Comparison;
import firstamp.account.FigureList;
import firstamp.analysis.figures.Evidence;

/**
 * A stored power-up, or what lies between two of its marks.
 *
 * @param study of the power-up
 * @param stretch of it, null = all of it
 */
public record StudyPart(PowerUpStudy study, Evidence.Stretch stretch) {

  /**
   * What follows a mark.
   *
   * @param number of the mark, 0 = before the first; null = the whole power-up
   * @return null if there is no such mark
   */
  public static StudyPart of(PowerUpStudy study, Integer number) {
    if (number == null) {
      return new StudyPart(study, null);
    }
    return study.evidence().stretches().stream()
        .filter(stretch -> stretch.number() == number)
        .findFirst()
        .map(stretch -> new StudyPart(study, stretch))
        .orElse(null);
  }

  /** Its figures and course. */
  public Evidence evidence() {
    return stretch == null ? study.evidence() : stretch.evidence();
  }

  /** Its figures as one list. */
  public FigureList figures() {
    return FigureList.of(evidence());
  }

  /** What changed from another part to this one. */
  public Comparison against(StudyPart earlier) {
    if (stretch == null && earlier.stretch == null) {
      return study.against(earlier.study);
    }
    boolean one =
        study.entry().uuid().equals(earlier.study.entry().uuid())
            || ProbeIdentity.of(earlier.study.header(), study.header()).isOne();
    return Comparison.of(earlier.evidence(), evidence(), one);
  }
}
