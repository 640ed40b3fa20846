package firstamp.emulate.probe;

import firstamp.protocol.codes.CalibrationState;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.CalibrationData;
import firstamp.protocol.values.ChannelScale;
import java.util.Collections;

/** What the probe keeps over a reset: starts, trips, calibration. */
public final class Memory {
  private static final int HIGHEST_U16 = 0xFFFF;

  private long bootId;
  private int lastTripNumber;
  private boolean latched;
  private ProbeMessage.Trip trip;
  private long tripTickMicros;
  private CalibrationState calibrationState = CalibrationState.BLANK;
  private CalibrationData calibration =
      new CalibrationData(
          0, ChannelScale.nominal(), Collections.nCopies(8, 2500), Collections.nCopies(8, 50));

  public long nextBootId() {
    return ++bootId;
  }

  long bootId() {
    return bootId;
  }

  int nextTripNumber() {
    lastTripNumber = lastTripNumber == HIGHEST_U16 ? 1 : lastTripNumber + 1;
    return lastTripNumber;
  }

  void latch(ProbeMessage.Trip newTrip, long pinLowTickMicros) {
    trip = newTrip;
    tripTickMicros = pinLowTickMicros;
    latched = true;
  }

  void clearLatch() {
    latched = false;
  }

  boolean latched() {
    return latched;
  }

  /** Number of the latched trip, 0 = none. */
  int latchedNumber() {
    return latched ? trip.number() : 0;
  }

  /** The last trip, latched or not; null before the first. */
  ProbeMessage.Trip trip() {
    return trip;
  }

  long tripTickMicros() {
    return tripTickMicros;
  }

  CalibrationState calibrationState() {
    return calibrationState;
  }

  /** Nominal values unless a valid record was written. */
  CalibrationData calibration() {
    return calibration;
  }

  public void writeCalibration(CalibrationData data) {
    calibration = data;
    calibrationState = CalibrationState.VALID;
  }

  public void damageCalibration() {
    calibrationState = CalibrationState.DAMAGED;
  }
}
