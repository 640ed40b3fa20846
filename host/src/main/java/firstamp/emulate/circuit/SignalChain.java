package firstamp.emulate.circuit;

/** Head and meter of the record chain: a tone or bursts like speech, and hum. */
final class SignalChain {
  private static final double LISTENS_FROM_SHARE = 0.6;
  private static final double OUTPUT_OVER_METER = 20;
  private static final double THUMP_S = 0.15;
  private static final double SQRT2 = Math.sqrt(2);

  private final SetValues set;
  private final double phase;
  private double closedS;

  SignalChain(SetValues set, long seed) {
    this.set = set;
    this.phase = new java.util.SplittableRandom(seed ^ 0x2545F491L).nextDouble() * 2 * Math.PI;
  }

  void closed(double nowS) {
    closedS = nowS;
  }

  /** Volts across the resistor in series with the head. */
  double headV(double nowS, double railV, boolean on) {
    double hum = on ? SQRT2 * set.headHumRmsV * Math.sin(2 * Math.PI * set.humHz * nowS) : 0;
    if (set.path != null && set.path.roves(true)) {
      return alive(railV) * (roving(nowS, on) + hum);
    }
    double lost = set.path == null ? 1 : Math.pow(10, -set.path.lossDb() / 20);
    return alive(railV) * (signal(nowS, on) * set.headOverMeter * lost + hum);
  }

  /**
   * Volts at the loudspeaker: what the meter sees, twenty times as large, and the start's thump.
   */
  double outputV(double nowS, double railV, boolean on) {
    double thump = on ? set.thumpV * Math.exp(-(nowS - closedS) / THUMP_S) : 0;
    return alive(railV) * signal(nowS, on) * OUTPUT_OVER_METER + thump;
  }

  /** Volts at the level meter. */
  double meterV(double nowS, double railV, boolean on) {
    double hum = on ? SQRT2 * set.meterHumRmsV * Math.sin(2 * Math.PI * set.humHz * nowS) : 0;
    double signal = set.path != null && set.path.roves(false) ? roving(nowS, on) : signal(nowS, on);
    return alive(railV) * (signal + hum);
  }

  /** At the clip that roves: as at the meter, with the level of the point it is on. */
  private double roving(double nowS, boolean on) {
    return signal(nowS, on) * set.path.rmsV() / set.meterRmsV;
  }

  /** How much of its gain the chain has at these volts of the rail. */
  private double alive(double railV) {
    double share = (railV / set.chainFullV - LISTENS_FROM_SHARE) / (0.9 - LISTENS_FROM_SHARE);
    return Math.max(0, Math.min(1, share));
  }

  private double signal(double nowS, boolean on) {
    double sinceS = nowS - closedS;
    if (!on || sinceS < set.toneFromS || sinceS >= set.toneUntilS) {
      return 0;
    }
    double peak = SQRT2 * set.meterRmsV;
    return set.speech
        ? peak * speech(sinceS)
        : peak * Math.sin(2 * Math.PI * set.toneHz * nowS + phase);
  }

  /** Syllables: a voice of 120 Hz and its multiples, four bursts a second, pauses between words. */
  private double speech(double sinceS) {
    double syllable = Math.max(0, Math.sin(2 * Math.PI * 3.7 * sinceS + phase));
    double word = Math.sin(2 * Math.PI * 0.55 * sinceS + phase) > -0.4 ? 1 : 0;
    double angle = 2 * Math.PI * (120 + 15 * Math.sin(2 * Math.PI * 0.8 * sinceS)) * sinceS;
    double voice =
        Math.sin(angle)
            + 0.8 * Math.sin(3 * angle + 1)
            + 0.5 * Math.sin(5 * angle + 2)
            + 0.3 * Math.sin(8 * angle + 3);
    return 0.8 * word * syllable * voice;
  }
}
