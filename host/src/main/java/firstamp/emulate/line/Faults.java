package firstamp.emulate.line;

import firstamp.protocol.frame.Frame;

/**
 * What goes wrong with the emulated probe, on purpose, for tests. Times are seconds from its first
 * start; a negative time is never; shares are per byte sent by the probe.
 *
 * @param droppedShare bytes lost
 * @param flippedShare bytes with one bit turned over
 * @param repeatedShare bytes that come twice
 * @param lateMillis everything from the probe comes so much later
 * @param resetAtS the chip resets (watchdog)
 * @param cableOutAtS the line ends, in the middle of a frame
 * @param protocolVersion version byte of every frame
 * @param calibrationDamaged the stored calibration fails its check
 * @param switchStuck the switch does not open once closed
 * @param limiterFailsFrom test of an arming from which on the limiter does not hold the switch off
 *     once the gate has its volts: 1 = before the look, 2 = behind it, 0 = it holds
 * @param selfTestBits failed self-tests
 * @param silentAtS from here on nothing that the probe sends arrives
 * @param silentForS for so long
 */
public record Faults(
    double droppedShare,
    double flippedShare,
    double repeatedShare,
    int lateMillis,
    double resetAtS,
    double cableOutAtS,
    int protocolVersion,
    boolean calibrationDamaged,
    boolean switchStuck,
    int limiterFailsFrom,
    int selfTestBits,
    double silentAtS,
    double silentForS) {
  /** Nothing goes wrong. */
  public static final Faults NONE =
      new Faults(0, 0, 0, 0, -1, -1, Frame.VERSION, false, false, 0, 0, -1, 0);

  /** Checks the ranges. */
  public Faults {
    share("droppedShare", droppedShare);
    share("flippedShare", flippedShare);
    share("repeatedShare", repeatedShare);
    if (lateMillis < 0 || protocolVersion < 0 || protocolVersion > 255) {
      throw new IllegalArgumentException(
          "lateMillis "
              + lateMillis
              + " (0 or more), protocolVersion "
              + protocolVersion
              + " (0 to 255)");
    }
  }

  private static void share(String name, double value) {
    if (!(value >= 0 && value <= 1)) {
      throw new IllegalArgumentException(name + " " + value + ", allowed 0 to 1");
    }
  }

  /** Bytes on the line are lost, turned over, doubled. */
  public Faults withLine(double dropped, double flipped, double repeated) {
    return new Faults(
        dropped,
        flipped,
        repeated,
        lateMillis,
        resetAtS,
        cableOutAtS,
        protocolVersion,
        calibrationDamaged,
        switchStuck,
        limiterFailsFrom,
        selfTestBits,
        silentAtS,
        silentForS);
  }

  /** Everything comes later. */
  public Faults withLateMillis(int millis) {
    return new Faults(
        droppedShare,
        flippedShare,
        repeatedShare,
        millis,
        resetAtS,
        cableOutAtS,
        protocolVersion,
        calibrationDamaged,
        switchStuck,
        limiterFailsFrom,
        selfTestBits,
        silentAtS,
        silentForS);
  }

  /** The chip resets at a time. */
  public Faults withResetAt(double seconds) {
    return new Faults(
        droppedShare,
        flippedShare,
        repeatedShare,
        lateMillis,
        seconds,
        cableOutAtS,
        protocolVersion,
        calibrationDamaged,
        switchStuck,
        limiterFailsFrom,
        selfTestBits,
        silentAtS,
        silentForS);
  }

  /** The cable is pulled at a time. */
  public Faults withCableOutAt(double seconds) {
    return new Faults(
        droppedShare,
        flippedShare,
        repeatedShare,
        lateMillis,
        resetAtS,
        seconds,
        protocolVersion,
        calibrationDamaged,
        switchStuck,
        limiterFailsFrom,
        selfTestBits,
        silentAtS,
        silentForS);
  }

  /** The probe speaks another version. */
  public Faults withProtocolVersion(int version) {
    return new Faults(
        droppedShare,
        flippedShare,
        repeatedShare,
        lateMillis,
        resetAtS,
        cableOutAtS,
        version,
        calibrationDamaged,
        switchStuck,
        limiterFailsFrom,
        selfTestBits,
        silentAtS,
        silentForS);
  }

  /** The calibration record is damaged. */
  public Faults withDamagedCalibration() {
    return new Faults(
        droppedShare,
        flippedShare,
        repeatedShare,
        lateMillis,
        resetAtS,
        cableOutAtS,
        protocolVersion,
        true,
        switchStuck,
        limiterFailsFrom,
        selfTestBits,
        silentAtS,
        silentForS);
  }

  /** The switch does not open. */
  public Faults withStuckSwitch() {
    return new Faults(
        droppedShare,
        flippedShare,
        repeatedShare,
        lateMillis,
        resetAtS,
        cableOutAtS,
        protocolVersion,
        calibrationDamaged,
        true,
        limiterFailsFrom,
        selfTestBits,
        silentAtS,
        silentForS);
  }

  /**
   * The switch comes on with its gate volts, although its pin is low.
   *
   * @param test of an arming from which on: 1 before the look, 2 behind it
   */
  public Faults withFailedLimiter(int test) {
    return new Faults(
        droppedShare,
        flippedShare,
        repeatedShare,
        lateMillis,
        resetAtS,
        cableOutAtS,
        protocolVersion,
        calibrationDamaged,
        switchStuck,
        test,
        selfTestBits,
        silentAtS,
        silentForS);
  }

  /** Self-tests that failed at the start. */
  public Faults withSelfTestBits(int bits) {
    return new Faults(
        droppedShare,
        flippedShare,
        repeatedShare,
        lateMillis,
        resetAtS,
        cableOutAtS,
        protocolVersion,
        calibrationDamaged,
        switchStuck,
        limiterFailsFrom,
        bits,
        silentAtS,
        silentForS);
  }

  /** Nothing arrives for a while; commands of the host still arrive. */
  public Faults withSilence(double atS, double forS) {
    return new Faults(
        droppedShare,
        flippedShare,
        repeatedShare,
        lateMillis,
        resetAtS,
        cableOutAtS,
        protocolVersion,
        calibrationDamaged,
        switchStuck,
        limiterFailsFrom,
        selfTestBits,
        atS,
        forS);
  }
}
