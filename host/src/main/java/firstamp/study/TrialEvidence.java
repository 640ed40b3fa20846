package firstamp.study;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import firstamp.log.PowerUpEntry;
import firstamp.model.Alarm;
import firstamp.model.Summary;
import firstamp.model.text.Worded;
import java.util.Set;

/** Whether a power-up says anything about a wire that was joined in it. */
final class TrialEvidence {
  /** A second is the least in which a current settles. */
  private static final double LEAST_MS = 1000;

  private static final Set<String> TOO_MUCH_CURRENT = Set.of("inrush", "running", "i2t");
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private TrialEvidence() {}

  /** Whether the look, the limiter or a rule found a short. */
  static boolean shorted(Summary summary) {
    return "hard-short".equals(summary.tripCause())
        || (summary.look() != null && "short".equals(summary.look().result()))
        || (summary.alarms() != null
            && summary.alarms().stream().map(Alarm::rule).anyMatch("short"::equals));
  }

  /** Whether the probe switched off because of the current. */
  static boolean drewTooMuch(Summary summary) {
    return summary.tripCause() != null && TOO_MUCH_CURRENT.contains(summary.tripCause());
  }

  /** Why a trial says nothing of a wire; null = it does. */
  static Worded missing(Summary summary, long number, String wire) {
    boolean told =
        shorted(summary)
            || drewTooMuch(summary)
            || "over-voltage".equals(summary.tripCause())
            || settled(
                summary.onMs(), summary.supply() == null ? null : summary.supply().steadyA());
    if (told) {
      return null;
    }
    if (summary.onMs() == null || summary.onMs() <= 0) {
      return Thinking.say("refused.never-on", number, wire);
    }
    return Thinking.say("refused.too-short", number, wire, summary.onMs() / 1000);
  }

  /** Whether a stored power-up can be compared with. */
  static boolean good(PowerUpEntry entry) {
    if (!entry.finished() || entry.summaryJson() == null || "tripped".equals(entry.outcome())) {
      return false;
    }
    try {
      JsonNode summary = MAPPER.readTree(entry.summaryJson());
      return settled(number(summary.path("onMs")), number(summary.path("supply").path("steadyA")));
    } catch (JsonProcessingException broken) {
      // A summary that cannot be read is no ground to judge by.
      return false;
    }
  }

  private static boolean settled(Double onMs, Double steadyA) {
    return onMs != null && onMs >= LEAST_MS && steadyA != null;
  }

  private static Double number(JsonNode node) {
    return node.isNumber() ? (Double) node.doubleValue() : null;
  }
}
