package firstamp.protocol;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * Lets tests tagged "chip" run where the firmware and its simulator were built, and prints a
 * warning where not. Found by JUnit through META-INF/services, so that a test needs nothing but the
 * tag.
 */
public final class ChipCondition implements ExecutionCondition {
  private static final List<Path> NEEDED =
      List.of(Path.of("firmware/build/probe.elf"), Path.of("firmware/build/probe-sim"));

  @Override
  public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
    boolean chip = context.getTags().contains("chip");
    ConditionEvaluationResult result =
        decide(chip, NEEDED, Boolean.getBoolean("firstamp.requireTools"));
    if (result.isDisabled()) {
      System.err.println("SKIPPED: tests on the simulated chip: " + result.getReason().orElse(""));
    }
    return result;
  }

  static ConditionEvaluationResult decide(boolean chip, List<Path> needed, boolean required) {
    if (!chip) {
      return ConditionEvaluationResult.enabled("not on the chip");
    }
    for (Path file : needed) {
      if (!Files.exists(file)) {
        String missing = file + " is not built; see build-firmware.sh for what it needs";
        if (required) {
          throw new IllegalStateException(
              missing + "; firstamp.requireTools forbids to skip this test");
        }
        return ConditionEvaluationResult.disabled(missing);
      }
    }
    return ConditionEvaluationResult.enabled("firmware and simulator are built");
  }
}
