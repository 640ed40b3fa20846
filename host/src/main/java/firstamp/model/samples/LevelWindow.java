package firstamp.model.samples;

/**
 * Levels of head and meter over one window of 200 ms (800 conversions each), the same window for
 * both.
 *
 * <p>Volts rms at the clip unless stated otherwise; a {@code Double} is null where it could not be
 * measured.
 *
 * @param firstIndex conversion index of the window's begin
 * @param endIndex conversion index after it
 * @param headRmsV head, 30 to 1600 Hz
 * @param meterRmsV meter, 30 to 1600 Hz
 * @param headToneV head, at the sheet's tone
 * @param meterToneV meter, at the sheet's tone
 * @param toneShare share of the meter's power (30 to 1600 Hz) that the tone holds, 0 to 1
 * @param meterDcV mean of the meter input
 * @param headHumV head, multiples of 50 or 60 Hz to 500 Hz, without those near the tone
 * @param meterHumV the same of the meter
 * @param humHz 50 or 60, the stronger one in the head
 * @param headNoiseFloorV rms that the converter's own noise and steps give on the head input
 * @param meterNoiseFloorV the same of the meter input
 * @param headClipped whether a head conversion was at an end of the range
 * @param meterClipped the same of the meter
 * @param headHumOddV of headHumV the part at humHz and its odd multiples
 * @param headHumEvenV of headHumV the part at twice humHz and its multiples
 */
public record LevelWindow(
    long firstIndex,
    long endIndex,
    double headRmsV,
    double meterRmsV,
    Double headToneV,
    Double meterToneV,
    double toneShare,
    double meterDcV,
    double headHumV,
    double meterHumV,
    int humHz,
    double headNoiseFloorV,
    double meterNoiseFloorV,
    boolean headClipped,
    boolean meterClipped,
    double headHumOddV,
    double headHumEvenV) {

  /** Levels with hum of the mains frequency alone. */
  public LevelWindow(
      long firstIndex,
      long endIndex,
      double headRmsV,
      double meterRmsV,
      Double headToneV,
      Double meterToneV,
      double toneShare,
      double meterDcV,
      double headHumV,
      double meterHumV,
      int humHz,
      double headNoiseFloorV,
      double meterNoiseFloorV,
      boolean headClipped,
      boolean meterClipped) {
    this(
        firstIndex,
        endIndex,
        headRmsV,
        meterRmsV,
        headToneV,
        meterToneV,
        toneShare,
        meterDcV,
        headHumV,
        meterHumV,
        humHz,
        headNoiseFloorV,
        meterNoiseFloorV,
        headClipped,
        meterClipped,
        headHumV,
        0);
  }
}
