package firstamp.model;

/** A limit that the probe watches and that the person may move while a power-up runs. */
public enum LimitKind {
  /** Supply current within the inrush time, ampere. */
  INRUSH_A("A"),
  /** Supply current after it, ampere. */
  RUNNING_A("A"),
  /** Magnitude of one rail, volt. */
  RAIL_OVER_V("V"),
  /** Volts of the supply, volt. */
  SUPPLY_MAX_V("V");

  private final String unit;

  LimitKind(String unit) {
    this.unit = unit;
  }

  /** Unit of its value. */
  public String unit() {
    return unit;
  }

  /**
   * What a sheet says; null = this limit is not watched.
   *
   * @param rail 1 to 3 for a rail's limit, else 0
   */
  public Double in(JobSheet sheet, int rail) {
    JobSheet.Limits limits = sheet.limits();
    return switch (this) {
      case INRUSH_A -> limits == null ? null : limits.inrushA();
      case RUNNING_A -> limits == null ? null : limits.runningA();
      case RAIL_OVER_V -> sheet.rail(rail) == null ? null : sheet.rail(rail).overV();
      case SUPPLY_MAX_V -> sheet.supply().maxV();
    };
  }

  /**
   * The sheet with this limit changed; one that the sheet does not have stays unwatched.
   *
   * @param rail 1 to 3 for a rail's limit, else 0
   * @param value finite and over 0
   */
  public JobSheet on(JobSheet sheet, int rail, double value) {
    if (!(value > 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(this + " " + value + ", expected over 0 and finite");
    }
    if (in(sheet, rail) == null) {
      return sheet;
    }
    JobSheet.Limits l = sheet.limits();
    JobSheet.Supply s = sheet.supply();
    return switch (this) {
      case INRUSH_A ->
          with(
              sheet,
              s,
              new JobSheet.Limits(
                  value,
                  l.inrushMs(),
                  l.runningA(),
                  l.i2tA2s(),
                  l.peakA(),
                  l.startA(),
                  l.startMs()),
              sheet.rails());
      case RUNNING_A ->
          with(
              sheet,
              s,
              new JobSheet.Limits(
                  l.inrushA(), l.inrushMs(), value, l.i2tA2s(), l.peakA(), l.startA(), l.startMs()),
              sheet.rails());
      case RAIL_OVER_V ->
          with(
              sheet,
              s,
              l,
              sheet.rails().stream()
                  .map(one -> one.input() == rail ? overV(one, value) : one)
                  .toList());
      case SUPPLY_MAX_V ->
          with(
              sheet,
              new JobSheet.Supply(
                  s.kind(),
                  s.probeSits(),
                  s.nominalV(),
                  s.minV(),
                  value,
                  s.limitA(),
                  s.fuseA(),
                  s.look(),
                  s.through(),
                  s.labelW(),
                  s.idleA(),
                  s.capacitanceUf()),
              l,
              sheet.rails());
    };
  }

  private static JobSheet.Rail overV(JobSheet.Rail r, double value) {
    return new JobSheet.Rail(
        r.input(),
        r.name(),
        r.nominalV(),
        r.tolerancePercent(),
        r.settleMs(),
        value,
        r.rippleMaxVrms(),
        r.capacitanceUf(),
        r.rectifier());
  }

  private static JobSheet with(
      JobSheet sheet,
      JobSheet.Supply supply,
      JobSheet.Limits limits,
      java.util.List<JobSheet.Rail> rails) {
    return new JobSheet(
        sheet.sheet(),
        sheet.set(),
        supply,
        limits,
        rails,
        sheet.levels(),
        sheet.rules(),
        sheet.path(),
        sheet.unknownWires(),
        sheet.steps());
  }
}
