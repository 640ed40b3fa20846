package firstamp.session;

import firstamp.protocol.ProbeMessage;
import firstamp.protocol.SelfTest;
import firstamp.protocol.SelfTestFault;
import java.util.ArrayList;
import java.util.List;

/** The probe's refusals in words that say what to do. */
final class Refusals {
  private Refusals() {}

  static String words(ProbeMessage.Refused refused) {
    return switch (refused.reason()) {
      case NO_CHASSIS_CLIP ->
          "the chassis clip is not on. Clip it to the set's chassis, then try again.";
      case BUTTON_DOWN ->
          "the button or the pedal of the probe box is held down. Let go, then try again.";
      case SELF_TEST -> "the probe box fails its self-test: " + selfTest(refused.detail());
      case CALIBRATION_DAMAGED ->
          "the probe box's calibration is damaged. Calibrate it again (`firstamp calibrate`).";
      case TRIP_LATCHED ->
          "the probe box has switched itself off before (number "
              + refused.detail()
              + "). Find out why, then give `--restore "
              + refused.detail()
              + "`.";
      case WRONG_NUMBER ->
          "the number after --restore is not that of the latched switch-off, which is "
              + refused.detail()
              + ".";
      case LIMIT_TOO_FINE ->
          "a limit is finer than the probe can watch (field "
              + refused.detail()
              + "). See `firstamp sheet check`.";
      case NO_LIMITS -> "the probe box has no limits yet. Try again.";
      case WRONG_STATE, BUSY ->
          "the probe box is busy with another power-up. Press its button, then try again.";
      default ->
          "the probe box refuses ("
              + refused.reason().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-')
              + ", "
              + refused.detail()
              + ").";
    };
  }

  static String selfTest(int bits) {
    List<String> faults = new ArrayList<>();
    for (SelfTestFault fault : new SelfTest(bits).faults()) {
      faults.add(
          switch (fault) {
            case REFERENCE -> "its 4.096 V reference is off by more than 10 %";
            case SUPPLY -> "its own supply is too low";
            case INPUT_STUCK -> "one of its inputs is stuck";
            case CALIBRATION -> "its calibration record is damaged; calibrate it again";
            case PROGRAM -> "its program is damaged; flash it again";
            case MEMORY -> "its memory fails";
            case STACK -> "its memory is short";
            case SWITCH_PATH ->
                "the switch does not open, or the set has another feed. Pull the supply";
            case WATCHDOG_START -> "it was restarted by its watchdog";
            case LATCH_RECORD -> "its record of the last switch-off is damaged";
            case CONVERTER -> "its converter does not run";
          });
    }
    return faults.isEmpty() ? "code " + bits + "." : String.join("; ", faults) + ".";
  }
}
