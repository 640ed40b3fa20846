package firstamp.model;

import firstamp.model.samples.LevelWindow;

/** Which input of the probe looks at a point: the two differ by a factor of 250 in range. */
public enum ClipInput {
  /** For millivolts; its range ends at 10 mV. */
  HEAD("head input"),
  /** For anything larger, to 2.5 V. */
  METER("meter input");

  /** Above this the head input may clip: 10 mV peak are -43 dBV of a sine, with 3 dB of room. */
  private static final double HEAD_UP_TO_DBV = -46;

  private final String words;

  ClipInput(String words) {
    this.words = words;
  }

  /** For people. */
  public String words() {
    return words;
  }

  /** The input for a level that is expected, null = not known. */
  public static ClipInput forLevel(Double expectedDbv) {
    return expectedDbv != null && expectedDbv <= HEAD_UP_TO_DBV ? HEAD : METER;
  }

  /** Volts rms in a window: of the tone where the sheet names one, else all of it. */
  public double volts(LevelWindow window) {
    Double tone = this == HEAD ? window.headToneV() : window.meterToneV();
    if (tone != null) {
      return tone;
    }
    return this == HEAD ? window.headRmsV() : window.meterRmsV();
  }

  /** Volts rms of the input's own noise. */
  public double floorV(LevelWindow window) {
    return this == HEAD ? window.headNoiseFloorV() : window.meterNoiseFloorV();
  }

  /** Whether the input was beyond its range in a window. */
  public boolean clipped(LevelWindow window) {
    return this == HEAD ? window.headClipped() : window.meterClipped();
  }
}
