package firstamp.window;

import static java.lang.annotation.ElementType.METHOD;
import static java.lang.annotation.ElementType.TYPE;

import java.awt.AWTError;
import java.awt.GraphicsEnvironment;
import java.awt.HeadlessException;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * A test that needs a screen (a virtual one will do). Without one it is skipped and says so; with
 * {@code -Dfirstamp.requireTools=true} it fails instead.
 */
@Tag("display")
@Target({TYPE, METHOD})
@Retention(RetentionPolicy.RUNTIME)
@ExtendWith(NeedsDisplay.Condition.class)
public @interface NeedsDisplay {

  /** Looks for a screen. */
  final class Condition implements ExecutionCondition {
    @Override
    public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
      return decide(hasDisplay(), Boolean.getBoolean("firstamp.requireTools"));
    }

    static ConditionEvaluationResult decide(boolean display, boolean required) {
      if (display) {
        return ConditionEvaluationResult.enabled("there is a screen");
      }
      String words = "no screen: the window is NOT tested; run under xvfb-run";
      if (required) {
        throw new IllegalStateException(words + " (firstamp.requireTools forbids to skip)");
      }
      System.err.println("firstamp: SKIPPED, " + words);
      return ConditionEvaluationResult.disabled(words);
    }

    private static boolean hasDisplay() {
      try {
        return !GraphicsEnvironment.isHeadless()
            && GraphicsEnvironment.getLocalGraphicsEnvironment().getScreenDevices().length > 0;
      } catch (HeadlessException | AWTError | LinkageError none) {
        return false;
      }
    }
  }
}
