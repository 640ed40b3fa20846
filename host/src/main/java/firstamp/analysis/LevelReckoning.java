package firstamp.analysis;

import firstamp.model.ChannelScale;

/** What the converter's noise and steps leave to be seen of a level. */
final class LevelReckoning {
  /** Bins of the band of a {@link LevelMeter}. */
  private static final double BAND_BINS = LevelMeter.HIGHEST_BIN - LevelMeter.LOWEST_BIN + 1;

  /**
   * A level under twice the noise is only "at most": noise alone comes that high now and then
   * (common practice, no source).
   */
  static final double TELLS_FROM_NOISE = 2;

  private static final double TONE_BINS = 5;
  private static final double HUM_BINS = 30;

  private LevelReckoning() {}

  /**
   * Below this a head level is noise.
   *
   * @param bandFloorV noise of the band 30 to 1600 Hz
   * @param tonal whether only the tone's bins count
   */
  static double floorV(double bandFloorV, boolean tonal) {
    return tonal ? bandFloorV * Math.sqrt(TONE_BINS / BAND_BINS) : bandFloorV;
  }

  /** Below this a hum level is noise. */
  static double humFloorV(double bandFloorV) {
    return bandFloorV * Math.sqrt(HUM_BINS / BAND_BINS);
  }

  /** The meter shows signal above three times its noise, where the sheet says nothing. */
  static double defaultSignalV(ChannelScale meter) {
    return 3 * LevelMeter.CONVERTER_NOISE_COUNTS * Math.abs(meter.perCount());
  }
}
