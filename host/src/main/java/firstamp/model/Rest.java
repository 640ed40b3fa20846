package firstamp.model;

/**
 * What a rule waits for before it is judged: its enabling condition, counted from the closing of
 * the switch.
 */
public enum Rest {
  /** Judged from the closing on. */
  NONE,
  /** The capacitors are charged: three times C V / I, or 300 ms where nothing is known. */
  CHARGED,
  /** The rule's own {@code afterMs}. */
  AFTER,
  /** The rule's own {@code fromMs}. */
  FROM,
  /** The rail's {@code settleMs}; the supply has 500 ms. */
  SETTLED,
  /** The thump of the start is over: {@code levels.fromMs}. */
  AUDIO,
  /** Judged only once the switch is open again. */
  OPENED,
  /** Has nothing to do with the switch. */
  ALWAYS;

  private static final double UNKNOWN_CHARGE_MS = 300;
  private static final double SUPPLY_MS = 500;
  private static final double RAIL_MS = 500;
  private static final double AUDIO_MS = 1500;

  /**
   * Milliseconds from closing until the rule is judged; 0 where it does not wait for that.
   *
   * @param effective sheet with its defaults filled in
   * @param rule that rests
   * @param rail 1 to 3, 0 = the supply or no rail
   */
  public double untilMs(JobSheet effective, RuleId rule, int rail) {
    return switch (this) {
      case NONE, OPENED, ALWAYS -> 0;
      case CHARGED -> chargedMs(effective, 0);
      case AFTER -> rule.settings(effective).numbers().get("afterMs");
      case FROM -> rule.settings(effective).numbers().get("fromMs");
      case SETTLED -> settledMs(effective, rail);
      case AUDIO -> audioMs(effective);
    };
  }

  /**
   * Capacitance behind the switch as far as anything is known of it, farad; 0 = nothing.
   *
   * @param lookFarad what the look saw, 0 = nothing known
   */
  private static double knownFarad(JobSheet effective, double lookFarad) {
    double ofRails = 0;
    for (JobSheet.Rail rail : effective.rails()) {
      ofRails += rail.capacitanceUf() == null ? 0 : rail.capacitanceUf() * 1e-6;
    }
    Double ofSupply = effective.supply().capacitanceUf();
    double said = ofSupply == null ? 0 : ofSupply * 1e-6;
    return Math.max(lookFarad, Math.max(ofRails, said));
  }

  /**
   * Until when charging may look like a short.
   *
   * @param lookFarad what the look saw, 0 = nothing known
   */
  public static double chargedMs(JobSheet effective, double lookFarad) {
    double farad = knownFarad(effective, lookFarad);
    JobSheet.Supply supply = effective.supply();
    Double ampere = supply.limitA();
    if (ampere == null && effective.limits() != null) {
      ampere = effective.limits().runningA();
    }
    return farad <= 0 || ampere == null
        ? UNKNOWN_CHARGE_MS
        : 3 * farad * supply.nominalV() / ampere * 1000;
  }

  private static double settledMs(JobSheet effective, int rail) {
    if (rail == 0) {
      return SUPPLY_MS;
    }
    JobSheet.Rail said = effective.rail(rail);
    return said == null || said.settleMs() == null ? RAIL_MS : said.settleMs();
  }

  private static double audioMs(JobSheet effective) {
    JobSheet.Levels levels = effective.levels();
    return levels == null || levels.fromMs() == null ? AUDIO_MS : levels.fromMs();
  }
}
