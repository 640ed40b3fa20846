package firstamp.run;

import firstamp.model.JobSheet;
import firstamp.model.LimitKind;
import java.util.Objects;

/**
 * The wish to have another limit.
 *
 * @param kind which one
 * @param rail 1 to 3 for a limit of a rail, else 0
 * @param value in the unit of the kind, over 0
 */
public record LimitMove(LimitKind kind, int rail, double value) {
  /** Checks the value. */
  public LimitMove {
    Objects.requireNonNull(kind, "kind");
    if (!(value > 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(
          "limit " + kind + " " + value + " " + kind.unit() + ", expected over 0 and finite");
    }
  }

  /** Whether the limit lets more through than that of the sheet, which must have one. */
  public boolean widens(JobSheet sheet) {
    Double now = kind.in(sheet, rail);
    return now == null || value > now;
  }

  /** The sheet with it. */
  public JobSheet on(JobSheet sheet) {
    return kind.on(sheet, rail, value);
  }
}
