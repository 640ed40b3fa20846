package firstamp.cli.run;

import firstamp.model.PedalJob;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** The job of a pedal by its word. */
final class PedalConverter implements ITypeConverter<PedalJob> {
  @Override
  public PedalJob convert(String word) {
    return switch (word) {
      case "off" -> PedalJob.OFF;
      case "hold" -> PedalJob.HOLD_TO_RUN;
      case "mark" -> PedalJob.MARK;
      default -> throw new TypeConversionException("'" + word + "', expected off, hold or mark");
    };
  }
}
