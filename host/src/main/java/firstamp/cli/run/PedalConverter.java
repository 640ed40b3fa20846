package firstamp.cli.run;

import firstamp.cli.output.BadValue;
import firstamp.cli.output.Said;
import firstamp.model.PedalJob;
import picocli.CommandLine.ITypeConverter;

/** The job of a pedal by its word. */
final class PedalConverter implements ITypeConverter<PedalJob> {
  @Override
  public PedalJob convert(String word) {
    return switch (word) {
      case "off" -> PedalJob.OFF;
      case "hold" -> PedalJob.HOLD_TO_RUN;
      case "mark" -> PedalJob.MARK;
      default -> throw new BadValue(Said.of("usage.pedal", word));
    };
  }
}
