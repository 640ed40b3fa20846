package firstamp.run.questions;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpEntry;

/** Which cautions are shown in the window: the whole page once per set, then two lines. */
public final class Cautions {
  /** The whole page. */
  public static final String WHOLE = "cautions";

  /** Two lines that concern the set. */
  public static final String SHORT = "cautions-short";

  private static final ObjectMapper MAPPER = new ObjectMapper();

  private Cautions() {}

  /**
   * The question to ask first.
   *
   * <p>A set counts as known once this log holds a power-up of it that was really on: then the page
   * has been confirmed. In doubt the whole page is shown.
   */
  public static String question(BenchLog log, String setName) throws LogException {
    for (PowerUpEntry entry : log.list()) {
      if (setName.equals(entry.setName()) && wasOn(entry)) {
        return SHORT;
      }
    }
    return WHOLE;
  }

  private static boolean wasOn(PowerUpEntry entry) {
    if (entry.summaryJson() == null) {
      return false;
    }
    try {
      return MAPPER.readTree(entry.summaryJson()).path("onMs").asDouble(0) > 0;
    } catch (JsonProcessingException damaged) {
      // A summary that cannot be read proves nothing.
      return false;
    }
  }
}
