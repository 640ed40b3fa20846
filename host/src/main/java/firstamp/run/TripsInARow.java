package firstamp.run;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import firstamp.log.PowerUpEntry;
import firstamp.model.Difference;
import firstamp.model.JobSheet;
import firstamp.model.LimitKind;
import java.util.Comparator;
import java.util.List;

/**
 * How often a set has switched itself off in a row for the same cause, and what that asks for
 * before it is switched on again: common practice at the bench, no source.
 *
 * @param count trips with the same cause, the latest one included; 0 = the last power-up was none
 * @param cause of them, null = none
 * @param restUntilEpochMs no switching on before, null = no rest
 */
public record TripsInARow(int count, String cause, Long restUntilEpochMs) {
  /** From the third trip on the set rests this long. */
  public static final long REST_MILLIS = 600_000;

  /** Nothing is known of earlier ones. */
  public static final TripsInARow FIRST = new TripsInARow(1, null, null);

  /** Half the volts were promised: this much over them switches off. */
  private static final double HALF_MARGIN = 1.2;

  private static final int REST_FROM = 3;
  private static final int PROOF_FROM = 2;
  private static final ObjectMapper MAPPER = new ObjectMapper();

  /**
   * What the log says about a set.
   *
   * @param entries of the log, any order
   * @param set its name
   * @param justNow cause of a trip whose summary is not in the log yet, null = none
   * @param nowEpochMs the computer's clock
   */
  public static TripsInARow of(
      List<PowerUpEntry> entries, String set, String justNow, long nowEpochMs) {
    int count = justNow == null ? 0 : 1;
    String cause = justNow;
    Long last = justNow == null ? null : (Long) nowEpochMs;
    for (PowerUpEntry entry :
        entries.stream()
            .filter(one -> set.equals(one.setName()) && one.summaryJson() != null)
            .sorted(Comparator.comparingLong(PowerUpEntry::number).reversed())
            .toList()) {
      JsonNode summary = summary(entry);
      if (!"tripped".equals(entry.outcome())) {
        if (summary.path("onMs").asDouble(0) > 0) {
          break;
        }
        // It was never on: that says nothing about the fault.
        continue;
      }
      String now = summary.path("tripCause").asText("");
      if (cause != null && !cause.equals(now)) {
        break;
      }
      cause = now;
      last = last == null ? endOf(entry) : last;
      count++;
    }
    return new TripsInARow(count, cause, count >= REST_FROM ? (Long) (last + REST_MILLIS) : null);
  }

  private static Long endOf(PowerUpEntry entry) {
    return entry.endedEpochMs() == null ? (Long) entry.startedEpochMs() : entry.endedEpochMs();
  }

  private static JsonNode summary(PowerUpEntry entry) {
    try {
      return MAPPER.readTree(entry.summaryJson());
    } catch (JsonProcessingException damaged) {
      return MAPPER.createObjectNode();
    }
  }

  /** Whole seconds that the set still rests, 0 = it does not. */
  public long restS(long nowEpochMs) {
    return restUntilEpochMs == null ? 0 : Math.max(0, (restUntilEpochMs - nowEpochMs + 999) / 1000);
  }

  /** Whether ohms or half the volts are wanted. */
  public boolean wantsProof(Difference difference) {
    return difference == Difference.NOTHING || count >= PROOF_FROM;
  }

  /** The maximum voltage of a power-up for which half the voltage was promised. */
  public static LimitMove ceiling(double halfV) {
    return new LimitMove(LimitKind.SUPPLY_MAX_V, 0, HALF_MARGIN * halfV);
  }

  /**
   * Current that a resistance to the chassis would draw; over the running limit it forbids
   * switching on. It can forbid, never permit.
   *
   * @param rail whose resistance it is, 0 = the supply's
   * @return ampere, null = it does not forbid
   */
  public static Double forbids(JobSheet effective, int rail, double ohm) {
    JobSheet.Rail one = effective.rail(rail);
    Double volts = rail == 0 || one == null ? effective.supply().nominalV() : one.nominalV();
    JobSheet.Limits limits = effective.limits();
    Double running = limits == null ? null : limits.runningA();
    if (volts == null || running == null) {
      return null;
    }
    double amps = ohm <= 0 ? Double.POSITIVE_INFINITY : Math.abs(volts) / ohm;
    return amps > running ? (Double) amps : null;
  }
}
