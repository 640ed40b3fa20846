package firstamp.run.talk;

import firstamp.model.SelfTestWords;
import firstamp.model.text.Worded;
import firstamp.protocol.message.ProbeMessage;
import java.util.Locale;

/** Why the probe box does not switch on, in words that say what to do. */
public final class Refusals {
  private static final String BUNDLE = "firstamp.run.refusals";

  private Refusals() {}

  public static Worded words(ProbeMessage.Refused refused) {
    Integer detail = refused.detail();
    return switch (refused.reason()) {
      case NO_CHASSIS_CLIP -> say("no-chassis-clip");
      case BUTTON_DOWN -> say("button-down");
      case FOOT_NOT_DOWN -> say("foot-up");
      case SELF_TEST -> failsSelfTest(detail);
      case CALIBRATION_DAMAGED -> say("calibration-damaged");
      case TRIP_LATCHED -> say("remembered", detail.toString());
      case WRONG_NUMBER -> say("wrong-number", detail.toString());
      case LIMIT_TOO_FINE -> say("limit-too-fine", detail.toString());
      case NO_LIMITS -> say("no-limits");
      case WRONG_STATE, BUSY -> say("busy");
      default -> say("other", id(refused.reason()), detail.toString());
    };
  }

  /** The probe box does not do as it says of itself. */
  public static Worded failsSelfTest(int bits) {
    return say("self-test", SelfTestWords.of(bits));
  }

  /** A probe box that only an older or newer program understands. */
  public static Worded otherVersion(String port, int version, int mine) {
    return say("old-box", port, version, mine);
  }

  /** Nobody on the line says that it is a probe box. */
  public static Worded noAnswer(String port, long bytes) {
    return say("no-answer", port, bytes);
  }

  /** Volts that are not ours while the switch is open. */
  public static Worded otherFeed(Object volts, Object where) {
    return say("other-feed", volts, where);
  }

  /** The same while there is still hope that they fall. */
  public static Worded otherFeedWaits(Object volts, Object where) {
    return say("other-feed.waits", volts, where);
  }

  private static String id(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The refusal of this key. */
  public static Worded say(String key, Object... values) {
    return Worded.of(BUNDLE, key, values);
  }
}
