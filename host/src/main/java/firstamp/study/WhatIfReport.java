package firstamp.study;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import firstamp.log.PowerUpReader;
import firstamp.model.Alarm;
import firstamp.model.RuleId;
import firstamp.model.Summary;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Which rules another sheet would have raised on a logged power-up, beside what was raised. */
public final class WhatIfReport {
  /**
   * One rule on one rail. The record holds what happened: what would have come after an earlier off
   * is not in it.
   *
   * @param rule identifier
   * @param rail 1 to 3; 0 = the supply or no rail
   * @param railName null = none
   * @param thenAtMs when it was raised, null = it was not
   * @param wouldAtMs when the other sheet would have raised it, null = never
   * @param cause of the trip that would have come, null = the host would have raised it, or nobody
   */
  public record Beside(
      String rule, int rail, String railName, Double thenAtMs, Double wouldAtMs, String cause) {
    private double firstMs() {
      return Math.min(or(thenAtMs), or(wouldAtMs));
    }

    private static double or(Double ms) {
      return ms == null ? Double.POSITIVE_INFINITY : ms;
    }
  }

  private final List<Beside> rows = new ArrayList<>();

  private WhatIfReport() {}

  /**
   * The rows, the earliest first.
   *
   * @param reader of the power-up
   * @param whatIf summary of {@link ReplayPowerUp#whatIf} with another sheet
   */
  public static List<Beside> of(PowerUpReader reader, Summary whatIf) {
    WhatIfReport beside = new WhatIfReport();
    for (JsonNode alarm : stored(reader)) {
      beside.then(
          alarm.path("rule").asText(),
          alarm.path("rail").asInt(0),
          alarm.path("railName").asText(null),
          alarm.path("atMs").asDouble());
    }
    for (Alarm alarm : whatIf.alarms()) {
      String cause = byTrip(alarm, whatIf) ? whatIf.tripCause() : null;
      beside.would(alarm.rule(), alarm.rail(), alarm.railName(), alarm.atMs(), cause);
    }
    beside.rows.sort(Comparator.comparingDouble(Beside::firstMs));
    return List.copyOf(beside.rows);
  }

  /** The alarm that the trip itself raises; a short found in it is the host's finding. */
  private static boolean byTrip(Alarm alarm, Summary whatIf) {
    boolean ofTrips =
        alarm.rule().equals(RuleId.OVER_CURRENT.id())
            || alarm.rule().equals(RuleId.OVER_VOLTAGE.id());
    return ofTrips && whatIf.tripAtMs() != null && alarm.atMs() == whatIf.tripAtMs();
  }

  private static Iterable<JsonNode> stored(PowerUpReader reader) {
    String summary = reader.entry().summaryJson();
    if (summary == null) {
      return List.of();
    }
    try {
      return JsonMapper.builder().build().readTree(summary).path("alarms");
    } catch (JsonProcessingException damaged) {
      return List.of();
    }
  }

  private void then(String rule, int rail, String name, double atMs) {
    if (find(rule, rail) < 0) {
      rows.add(new Beside(rule, rail, name, atMs, null, null));
    }
  }

  private void would(String rule, int rail, String name, double atMs, String cause) {
    int place = find(rule, rail);
    if (place < 0) {
      rows.add(new Beside(rule, rail, name, null, atMs, cause));
      return;
    }
    Beside row = rows.get(place);
    if (row.wouldAtMs() == null || row.wouldAtMs() > atMs) {
      rows.set(place, new Beside(rule, rail, row.railName(), row.thenAtMs(), atMs, cause));
    }
  }

  private int find(String rule, int rail) {
    for (int k = 0; k < rows.size(); k++) {
      if (rows.get(k).rule().equals(rule) && rows.get(k).rail() == rail) {
        return k;
      }
    }
    return -1;
  }
}
