package firstamp.run.talk;

import firstamp.model.text.Phrases;
import firstamp.protocol.ProbeMessage;
import firstamp.protocol.SelfTest;
import firstamp.protocol.SelfTestFault;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The probe's refusals in words that say what to do; the log and the command line speak English.
 */
public final class Refusals {
  private static final Phrases WORDS = new Phrases("firstamp.run.refusals");

  private Refusals() {}

  public static String words(ProbeMessage.Refused refused) {
    Integer detail = refused.detail();
    return switch (refused.reason()) {
      case NO_CHASSIS_CLIP -> say("no-chassis-clip");
      case BUTTON_DOWN -> say("button-down");
      case FOOT_NOT_DOWN -> say("foot-up");
      case SELF_TEST -> say("self-test", selfTest(refused.detail()));
      case CALIBRATION_DAMAGED -> say("calibration-damaged");
      case TRIP_LATCHED -> say("remembered", detail.toString());
      case WRONG_NUMBER -> say("wrong-number", detail.toString());
      case LIMIT_TOO_FINE -> say("limit-too-fine", detail.toString());
      case NO_LIMITS -> say("no-limits");
      case WRONG_STATE, BUSY -> say("busy");
      default -> say("other", id(refused.reason()), detail.toString());
    };
  }

  static String selfTest(int bits) {
    List<String> faults = new ArrayList<>();
    for (SelfTestFault fault : new SelfTest(bits).faults()) {
      faults.add(say("fault." + id(fault)));
    }
    return faults.isEmpty() ? "code " + bits + "." : String.join("; ", faults) + ".";
  }

  /** The probe box does not do as it says of itself. */
  public static String failsSelfTest(int bits) {
    return say("self-test", selfTest(bits));
  }

  /** A probe box that only an older or newer program understands. */
  public static String otherVersion(String port, int version, int mine) {
    return say("old-box", port, version, mine);
  }

  /** Nobody on the line says that it is a probe box. */
  public static String noAnswer(String port, long bytes) {
    return say("no-answer", port, bytes);
  }

  /** Volts that are not ours while the switch is open. */
  public static String otherFeed(String volts, String where) {
    return say("other-feed", volts, where);
  }

  /** The same while there is still hope that they fall. */
  public static String otherFeedWaits(String volts, String where) {
    return say("other-feed.waits", volts, where);
  }

  private static String id(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static String say(String key, Object... values) {
    return WORDS.say(key, values);
  }
}
