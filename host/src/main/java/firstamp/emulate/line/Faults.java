package firstamp.emulate.line;

import firstamp.model.samples.Channel;
import firstamp.protocol.frame.Frame;
import java.util.function.Consumer;

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
 * @param shuntShare of its ohms that the shunt has left: 1 = whole, 0.5 = one of two is open, near
 *     nothing = bridged
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
    double shuntShare,
    int selfTestBits,
    double silentAtS,
    double silentForS) {
  /** Nothing goes wrong. */
  public static final Faults NONE =
      new Faults(0, 0, 0, 0, -1, -1, Frame.VERSION, false, false, 0, 1, 0, -1, 0);

  /** Checks the ranges. */
  public Faults {
    share("droppedShare", droppedShare);
    share("flippedShare", flippedShare);
    share("repeatedShare", repeatedShare);
    share("shuntShare", shuntShare);
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
    return with(
        next -> {
          next.droppedShare = dropped;
          next.flippedShare = flipped;
          next.repeatedShare = repeated;
        });
  }

  /** Everything comes later. */
  public Faults withLateMillis(int millis) {
    return with(next -> next.lateMillis = millis);
  }

  /** The chip resets at a time. */
  public Faults withResetAt(double seconds) {
    return with(next -> next.resetAtS = seconds);
  }

  /** The cable is pulled at a time. */
  public Faults withCableOutAt(double seconds) {
    return with(next -> next.cableOutAtS = seconds);
  }

  /** The probe speaks another version. */
  public Faults withProtocolVersion(int version) {
    return with(next -> next.protocolVersion = version);
  }

  /** The calibration record is damaged. */
  public Faults withDamagedCalibration() {
    return with(next -> next.calibrationDamaged = true);
  }

  /** The switch does not open. */
  public Faults withStuckSwitch() {
    return with(next -> next.switchStuck = true);
  }

  /**
   * The switch comes on with its gate volts, although its pin is low.
   *
   * @param test of an arming from which on: 1 before the look, 2 behind it
   */
  public Faults withFailedLimiter(int test) {
    return with(next -> next.limiterFailsFrom = test);
  }

  /** The shunt has only a share of its ohms left. */
  public Faults withShuntShare(double share) {
    return with(next -> next.shuntShare = share);
  }

  /** What the box makes of a value: a shunt that lost ohms gives less for the same current. */
  public double shown(Channel channel, double value) {
    return channel == Channel.I || channel == Channel.J ? shuntShare * value : value;
  }

  /** Self-tests that failed at the start. */
  public Faults withSelfTestBits(int bits) {
    return with(next -> next.selfTestBits = bits);
  }

  /** Nothing arrives for a while; commands of the host still arrive. */
  public Faults withSilence(double atS, double forS) {
    return with(
        next -> {
          next.silentAtS = atS;
          next.silentForS = forS;
        });
  }

  private Faults with(Consumer<Next> change) {
    Next next = new Next(this);
    change.accept(next);
    return next.faults();
  }

  /** A copy that can be changed. */
  private static final class Next {
    private double droppedShare;
    private double flippedShare;
    private double repeatedShare;
    private int lateMillis;
    private double resetAtS;
    private double cableOutAtS;
    private int protocolVersion;
    private boolean calibrationDamaged;
    private boolean switchStuck;
    private int limiterFailsFrom;
    private double shuntShare;
    private int selfTestBits;
    private double silentAtS;
    private double silentForS;

    Next(Faults from) {
      droppedShare = from.droppedShare;
      flippedShare = from.flippedShare;
      repeatedShare = from.repeatedShare;
      lateMillis = from.lateMillis;
      resetAtS = from.resetAtS;
      cableOutAtS = from.cableOutAtS;
      protocolVersion = from.protocolVersion;
      calibrationDamaged = from.calibrationDamaged;
      switchStuck = from.switchStuck;
      limiterFailsFrom = from.limiterFailsFrom;
      shuntShare = from.shuntShare;
      selfTestBits = from.selfTestBits;
      silentAtS = from.silentAtS;
      silentForS = from.silentForS;
    }

    Faults faults() {
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
          shuntShare,
          selfTestBits,
          silentAtS,
          silentForS);
    }
  }
}
