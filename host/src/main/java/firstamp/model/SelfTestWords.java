package firstamp.model;

import firstamp.model.text.Worded;
import java.util.List;
import java.util.stream.IntStream;

/** What is wrong with a probe box by its own self-test, in words that say what to do. */
public final class SelfTestWords {
  private static final String BUNDLE = "firstamp.model.self-test";

  /** By the number of their bits. */
  private static final List<String> FAULTS =
      List.of(
          "reference",
          "supply",
          "input-stuck",
          "calibration",
          "program",
          "memory",
          "stack",
          "switch-path",
          "watchdog-start",
          "latch-record",
          "converter",
          "fuses",
          "currents",
          "gate",
          "shunt");

  /** The coarse input of the current does not follow the fine one. */
  static final int CURRENTS = 1 << FAULTS.indexOf("currents");

  private SelfTestWords() {}

  /** The faults of some bits, a semicolon between them. */
  public static Worded of(int bits) {
    return ids(bits).stream()
        .map(fault -> Worded.of(BUNDLE, fault))
        .reduce((all, one) -> Worded.of(BUNDLE, "and", all, one))
        .orElseGet(() -> Worded.of(BUNDLE, "code", String.valueOf(bits)));
  }

  /** Identifiers of the faults, as in the JSON lines; a start by the watchdog is none. */
  public static List<String> ids(int bits) {
    return IntStream.range(0, FAULTS.size())
        .filter(bit -> (bits >> bit & 1) != 0)
        .mapToObj(FAULTS::get)
        .filter(fault -> !fault.equals("watchdog-start"))
        .toList();
  }
}
