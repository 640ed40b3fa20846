package firstamp.analysis.spectrum;

/**
 * What a window of levels holds beyond its totals: hum line by line, bands, harmonics of the tone,
 * and where a needle stood. Volt and volt squared at the clip. Immutable.
 */
public final class LevelDetail {
  public final long firstIndex;
  public final MainsLines headLines;
  public final double[] headBands;
  public final double[] meterBands;
  public final double needleHighestV;
  final double needleMeanV;
  public final double meterDcV;
  public final Split split;

  LevelDetail(
      long firstIndex,
      MainsLines headLines,
      double[] headBands,
      double[] meterBands,
      double needleHighestV,
      double needleMeanV,
      double meterDcV,
      Split split) {
    this.firstIndex = firstIndex;
    this.headLines = headLines;
    this.headBands = headBands;
    this.meterBands = meterBands;
    this.needleHighestV = needleHighestV;
    this.needleMeanV = needleMeanV;
    this.meterDcV = meterDcV;
    this.split = split;
  }

  /**
   * The head's power apart, volt squared.
   *
   * @param tone the tone alone
   * @param harmonics its multiples to 1600 Hz, noise taken off
   * @param noise what is neither tone nor multiple of it or of the mains
   */
  public record Split(double tone, double harmonics, double noise) {}
}
