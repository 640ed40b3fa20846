package firstamp.analysis.figures;

import firstamp.analysis.spectrum.Decibels;
import firstamp.analysis.spectrum.LevelMeter;
import firstamp.analysis.spectrum.VuBallistics;
import firstamp.model.JobSheet;
import firstamp.model.Summary;
import firstamp.model.samples.ChannelScale;
import java.util.List;

/** Figures of head and meter, and what the converter's noise and steps leave to be seen of them. */
final class LevelCalculation {
  /** Bins of the band of a {@link LevelMeter}. */
  private static final double BAND_BINS = LevelMeter.HIGHEST_BIN - LevelMeter.LOWEST_BIN + 1;

  /**
   * A level under twice the noise is only "at most": noise alone comes that high now and then
   * (common practice, no source).
   */
  static final double TELLS_FROM_NOISE = 2;

  private static final double TONE_BINS = 5;
  private static final double HUM_BINS = 30;
  private static final double LOWEST_VU = -60;

  private LevelCalculation() {}

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

  /** Empty sums for a sheet. */
  static LevelSums sums(JobSheet sheet, ChannelScale meter) {
    Double dbv = sheet.levels() == null ? null : sheet.levels().meterSignalDbv();
    double signalV = dbv != null ? Decibels.voltsOfDbv(dbv) : defaultSignalV(meter);
    Double toneHz = sheet.levels() == null ? null : sheet.levels().toneHz();
    return new LevelSums(signalV, ExpectedDistance.of(sheet.levels()), toneHz);
  }

  /** Head and meter; null if the sheet names no levels or no window came. */
  static Summary.LevelFigures figures(LevelSums sums, JobSheet.Levels levels) {
    if (levels == null || sums.headFloorV() == null) {
      return null;
    }
    double floorV = floorV(sums.headFloorV(), sums.tonal());
    Double headV =
        sums.headV() == null || !sums.headJoined() ? null : (Double) Math.max(sums.headV(), floorV);
    Double meterV = sums.meterV();
    Double headDbv = headV == null ? null : (Double) Decibels.dbv(headV);
    Double meterDbv = meterV == null ? null : (Double) Decibels.dbv(meterV);
    return new Summary.LevelFigures(
        sums.tonal() ? levels.toneHz() : null,
        headDbv,
        headV == null || levels.headOhm() == null
            ? null
            : (Double) (headV / levels.headOhm() * 1e6),
        meterDbv,
        headDbv == null ? null : (Double) (meterDbv - headDbv),
        levels.expectedDb(),
        humDbv(sums));
  }

  /** Hum in the head, null where it is under the noise. */
  static Double humDbv(LevelSums sums) {
    Double humV = sums.humV();
    boolean seen = sums.headJoined() && humV != null && humV > humFloorV(sums.headFloorV());
    return seen ? (Double) Decibels.dbv(humV) : null;
  }

  /**
   * What goes beyond the summary.
   *
   * @param before sums of the time before closing
   */
  static Evidence.Heard heard(
      LevelSums sums, JobSheet sheet, LevelSums before, List<Evidence.InStep> inStep) {
    Double fullV = sheet.levels() == null ? null : sheet.levels().meterFullV();
    Double dcV = sums.meterDcV();
    Double needleVu = fullV == null && sums.anySignal() ? vu(sums.needleHighestV()) : null;
    Double needlePercent = fullV == null || dcV == null ? null : (Double) (100 * dcV / fullV);
    if (!sums.headJoined()) {
      return Evidence.Heard.meterAlone(needleVu, needlePercent);
    }
    Double headV = sums.headV();
    boolean atFloor =
        headV != null && headV <= TELLS_FROM_NOISE * floorV(sums.headFloorV(), sums.tonal());
    SpeechSums speech = sums.speech();
    Double harmonics = sums.harmonicsShare();
    Double noiseV = sums.headNoiseV();
    boolean hum = sums.headFloorV() != null && humDbv(sums) != null;
    return new Evidence.Heard(
        speech.distance().mean(),
        speech.distance().plusMinus(),
        speech.distance().count(),
        speech.over().mean(),
        speech.over().plusMinus(),
        speech.curve(),
        atFloor,
        sums.humHz(),
        sums.humEvenShare(),
        before.headFloorV() == null ? null : humDbv(before),
        hum ? sums.pattern().kind(sums.humHz()) : null,
        hum ? inStep : List.of(),
        harmonics == null || atFloor ? null : (Double) (100 * harmonics),
        noiseV == null || !(noiseV > 0) ? null : (Double) Decibels.dbv(noiseV),
        needleVu,
        needlePercent);
  }

  private static Double vu(Double volts) {
    double db =
        volts == null || !(volts > 0)
            ? Double.NEGATIVE_INFINITY
            : Decibels.ratio(volts, VuBallistics.ZERO_V);
    return db < LOWEST_VU ? null : (Double) db;
  }
}
