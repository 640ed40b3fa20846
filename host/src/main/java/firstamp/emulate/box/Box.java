package firstamp.emulate.box;

import firstamp.model.samples.Channel;
import firstamp.protocol.values.CalibrationData;
import firstamp.protocol.values.ChannelScale;
import java.util.List;

/**
 * A box: what its inputs really do, and what it keeps as their calibration.
 *
 * @param inputs in channel order
 * @param clockShare by how much its clock is fast, share of the true time
 * @param kept its calibration, null = none
 */
public record Box(List<BoxInput> inputs, double clockShare, CalibrationData kept) {
  private static final double FASTEST = 0.02;

  /** Copies and checks. */
  public Box {
    inputs = List.copyOf(inputs);
    if (inputs.size() != Channel.values().length || !(Math.abs(clockShare) <= FASTEST)) {
      throw new IllegalArgumentException(
          inputs.size() + " inputs (8), clock off by " + clockShare + " (at most 0.02)");
    }
  }

  /** A box that does exactly what it keeps, or has never been told. */
  public static Box exact(List<ChannelScale> scales, CalibrationData kept) {
    return new Box(scales.stream().map(BoxInput::exact).toList(), 0, kept);
  }

  /** Exactly nominal, never calibrated. */
  public static Box ideal() {
    return exact(ChannelScale.nominal(), null);
  }

  /**
   * The box of a kind.
   *
   * @param seed which of the boxes that the parts allow
   */
  public static Box of(BoxKind kind, long seed) {
    return switch (kind) {
      case SOLDERED -> DrawnBox.of(seed).calibrated();
      case NEW -> DrawnBox.of(seed).blank();
      case IDEAL -> ideal();
    };
  }

  /** What an input really does. */
  public BoxInput input(Channel channel) {
    return inputs.get(channel.ordinal());
  }
}
