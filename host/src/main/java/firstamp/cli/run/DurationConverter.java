package firstamp.cli.run;

import firstamp.cli.output.BadValue;
import firstamp.cli.output.Said;
import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;

/** Reads a length of time such as 500ms, 10s, 1.5min, 8h, into microseconds. */
final class DurationConverter implements ITypeConverter<Long> {
  private static final Pattern SHAPE = Pattern.compile("(\\d{1,9}(?:\\.\\d{1,6})?)(ms|s|min|h)");
  private static final BigDecimal LONGEST_MICROS = BigDecimal.valueOf(1000L * 3600 * 1_000_000);

  @Override
  public Long convert(String text) {
    Matcher shape = SHAPE.matcher(text);
    if (!shape.matches()) {
      throw new BadValue(Said.of("usage.no-duration", text));
    }
    long perUnit =
        switch (shape.group(2)) {
          case "ms" -> 1_000L;
          case "s" -> 1_000_000L;
          case "min" -> 60_000_000L;
          default -> 3_600_000_000L;
        };
    BigDecimal micros = new BigDecimal(shape.group(1)).multiply(BigDecimal.valueOf(perUnit));
    if (micros.signum() <= 0 || micros.compareTo(LONGEST_MICROS) > 0) {
      throw new BadValue(Said.of("usage.duration-range", text));
    }
    return micros.longValue();
  }
}
