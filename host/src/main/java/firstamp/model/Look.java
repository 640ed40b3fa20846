package firstamp.model;

import firstamp.model.samples.Zero;
import java.util.Arrays;

/**
 * What the probe found through the look resistor before closing the switch, in the probe's own
 * integers.
 *
 * @param result the finding
 * @param closes whether the switch closes next
 * @param startMicros begin of the look (or of the check that ended it), microseconds since the
 *     probe's start
 * @param endMicros when it ended
 * @param zero zeros taken before it
 * @param pairs pairs of V and J conversions taken
 * @param endV16 last mean of V, 1/16 count, zero not taken off
 * @param endJ16 last mean of J, 1/16 count, zero not taken off
 * @param sumV sum of all V conversions, counts
 * @param sumJ sum of all J conversions, counts
 */
public record Look(
    Result result,
    boolean closes,
    long startMicros,
    long endMicros,
    Zero zero,
    int pairs,
    int endV16,
    int endJ16,
    long sumV,
    long sumJ) {

  /** Finding of the look; {@link #wireCode()} is that of the wire format. */
  public enum Result {
    /** Nothing against closing. */
    CLEAR(0, "clear", true),
    /** Under 30 ohm: a motor or a cold lamp. */
    LOW(1, "low", true),
    /** No current: nothing is joined. */
    NOTHING_JOINED(2, "nothing-joined", true),
    /** Not made. */
    SKIPPED(3, "skipped", true),
    /** A short, or a cold lamp. */
    SHORT(4, "short", false),
    /** The supply is the wrong way round. */
    REVERSED(5, "reversed", false),
    /** The supply is over 1.15 x nominal. */
    TOO_HIGH(6, "too-high", false),
    /** The supply is under 0.3 x nominal. */
    NO_SUPPLY(7, "no-supply", false),
    /** The surge would be more than the limiter can hold. */
    TOO_MUCH_CHARGE(8, "too-much-charge", false),
    /** Current and volts of the look do not fit each other: the shunt of the probe. */
    SHUNT(9, "shunt", false),
    /** Current flows with the switch off. */
    CURRENT_WHILE_OFF(16, "current-while-off", false),
    /** Volts on the set side do not fall with the switch off. */
    VOLTS_STAY(17, "volts-stay", false),
    /** I, J or V does not stand where it must when nothing flows: a lead of the probe is broken. */
    NO_ZERO(18, "no-zero", false),
    /** The probe's limiter does not hold its switch. */
    LIMITER(19, "limiter", false);

    private final int wireCode;
    private final String id;
    private final boolean letsClose;

    Result(int wireCode, String id, boolean letsClose) {
      this.wireCode = wireCode;
      this.id = id;
      this.letsClose = letsClose;
    }

    /** Number in the wire format. */
    public int wireCode() {
      return wireCode;
    }

    /** Identifier in JSON lines and in the log. */
    public String id() {
      return id;
    }

    /** Whether this finding lets the switch close. */
    public boolean letsClose() {
      return letsClose;
    }

    /** Whether it says that the probe's own switch or inputs are in doubt. */
    public boolean doubtsTheProbe() {
      return switch (this) {
        case CURRENT_WHILE_OFF, VOLTS_STAY, NO_ZERO, SHUNT, LIMITER -> true;
        default -> false;
      };
    }

    /** The same by identifier. */
    public static boolean doubtsTheProbe(String id) {
      return Arrays.stream(values())
          .anyMatch(result -> result.id.equals(id) && result.doubtsTheProbe());
    }

    /** The result with this number on the wire. */
    public static Result ofWire(int code) {
      for (Result result : values()) {
        if (result.wireCode == code) {
          return result;
        }
      }
      throw new IllegalArgumentException("look result " + code);
    }
  }
}
