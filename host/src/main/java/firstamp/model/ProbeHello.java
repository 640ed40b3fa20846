package firstamp.model;

import firstamp.model.samples.Calibration;

/**
 * Who answered on the port.
 *
 * @param protocolVersion of the wire format
 * @param firmwareMajor version of the firmware
 * @param firmwareMinor version of the firmware
 * @param bootId counts the probe's starts
 * @param resetCauseBits bit 0 power-on, 1 external, 2 brown-out, 3 watchdog
 * @param state of the switch
 * @param inputBits bit 0 chassis clip, 1 supply present, 2 reversed, 3 button, 4 pedal, 5 isolated
 *     link, 6 comparator
 * @param selfTestBits 0 = all passed
 * @param latchedTrip number of the latched trip, 0 = none
 * @param latchedCause its cause, null = none
 * @param calibration scales
 * @param hardShortA comparator level
 * @param lookOhm look resistor
 * @param kind what answered: a board, the simulated chip or the emulated probe, in words for the
 *     log
 */
public record ProbeHello(
    int protocolVersion,
    int firmwareMajor,
    int firmwareMinor,
    long bootId,
    int resetCauseBits,
    SwitchState state,
    int inputBits,
    int selfTestBits,
    int latchedTrip,
    TripCause latchedCause,
    Calibration calibration,
    double hardShortA,
    double lookOhm,
    String kind) {

  /** Whether the link to the computer is an isolated one. */
  public boolean isolated() {
    return (inputBits & 1 << 5) != 0;
  }

  /** Whether the chassis clip is on. */
  public boolean chassisClip() {
    return (inputBits & 1) != 0;
  }
}
