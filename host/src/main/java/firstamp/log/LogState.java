package firstamp.log;

import firstamp.log.LogException.Kind;
import firstamp.model.samples.SamplePlan;
import firstamp.model.text.Worded;
import java.nio.file.Path;
import java.util.Locale;

/**
 * Whether what comes is being written.
 *
 * @param logging false: it waits in memory
 * @param text whole sentences: what is wrong and what to do, or that it is written again
 */
public record LogState(boolean logging, Worded text) {
  private static final String BUNDLE = "firstamp.log.trouble";

  /** It cannot be written; each cause has a sentence of its own. */
  public static LogState trouble(LogException failed, Path file) {
    return new LogState(false, say(key(failed.kind()), file.getFileName()));
  }

  /**
   * It is written again.
   *
   * @param dropped conversions that found no room in memory meanwhile
   */
  static LogState back(long dropped) {
    return new LogState(
        true,
        dropped == 0
            ? say("back")
            : say(
                "back.gap",
                String.format(
                    Locale.ROOT, "%.1f", dropped / (double) SamplePlan.CONVERSIONS_PER_SECOND)));
  }

  private static String key(Kind kind) {
    return switch (kind) {
      case BUSY -> "busy";
      case FULL -> "full";
      case READ_ONLY, UNREADABLE, EXISTS -> "read-only";
      case GONE, MISSING -> "gone";
      case DAMAGED, NOT_A_LOG, NEWER -> "damaged";
      case IO -> "io";
    };
  }

  private static Worded say(String key, Object... values) {
    return Worded.of(BUNDLE, key, values);
  }
}
