package firstamp.hardware;

import java.io.File;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.extension.ConditionEvaluationResult;
import org.junit.jupiter.api.extension.ExecutionCondition;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.platform.commons.support.AnnotationSupport;

/** Skips a test class with a warning where a program is missing, unless tools are required. */
final class ToolCondition implements ExecutionCondition {

  /** The program that the class cannot do without: on the search path, or a path with a slash. */
  @Target(ElementType.TYPE)
  @Retention(RetentionPolicy.RUNTIME)
  @ExtendWith(ToolCondition.class)
  @interface Needs {
    String value();
  }

  @Override
  public ConditionEvaluationResult evaluateExecutionCondition(ExtensionContext context) {
    String tool =
        AnnotationSupport.findAnnotation(context.getTestClass(), Needs.class)
            .map(Needs::value)
            .orElseThrow();
    ConditionEvaluationResult result =
        decide(tool, System.getenv("PATH"), Boolean.getBoolean("firstamp.requireTools"));
    if (result.isDisabled()) {
      System.err.println(
          "SKIPPED: "
              + context.getDisplayName()
              + " (hardware): "
              + result.getReason().orElse("no reason"));
    }
    return result;
  }

  static ConditionEvaluationResult decide(String tool, String searchPath, boolean required) {
    boolean built = tool.contains("/");
    boolean there =
        built
            ? Files.isExecutable(Path.of(tool))
            : Arrays.stream(searchPath.split(File.pathSeparator))
                .anyMatch(folder -> Files.isExecutable(Path.of(folder, tool)));
    if (there) {
      return ConditionEvaluationResult.enabled(tool + " is installed");
    }
    String missing =
        built
            ? tool + " is not built; see firmware/sim/Makefile for what it needs"
            : tool + " is not on the search path; on Debian: apt-get install " + tool;
    if (required) {
      throw new IllegalStateException(
          missing + "; firstamp.requireTools forbids to skip this test");
    }
    return ConditionEvaluationResult.disabled(missing);
  }
}
