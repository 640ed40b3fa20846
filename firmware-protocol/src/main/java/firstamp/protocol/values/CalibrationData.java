package firstamp.protocol.values;

import java.util.List;

/**
 * A calibration as the probe keeps it; lists are in channel order.
 *
 * @param calibratedEpochSeconds seconds since 1970 as the host gave them, unsigned 32 bits; 0 =
 *     never
 * @param scales eight scales
 * @param gainUncertaintyE5 eight standard uncertainties of the gain, 1e-5 of the value, 0 to 65535
 * @param zeroUncertaintyHundredths eight standard uncertainties of the zero, 1/100 count, 0 to
 *     65535
 */
public record CalibrationData(
    long calibratedEpochSeconds,
    List<ChannelScale> scales,
    List<Integer> gainUncertaintyE5,
    List<Integer> zeroUncertaintyHundredths) {
  public CalibrationData {
    Check.range(1, "calibratedEpochSeconds", calibratedEpochSeconds, 0, Check.U32);
    scales = Check.size(2, "scales", scales, SlotPlan.CHANNELS);
    gainUncertaintyE5 = Check.size(3, "gainUncertaintyE5", gainUncertaintyE5, SlotPlan.CHANNELS);
    zeroUncertaintyHundredths =
        Check.size(4, "zeroUncertaintyHundredths", zeroUncertaintyHundredths, SlotPlan.CHANNELS);
    for (int channel = 0; channel < SlotPlan.CHANNELS; channel++) {
      Check.range(3, "gainUncertaintyE5", gainUncertaintyE5.get(channel), 0, Check.U16);
      Check.range(
          4, "zeroUncertaintyHundredths", zeroUncertaintyHundredths.get(channel), 0, Check.U16);
    }
  }
}
