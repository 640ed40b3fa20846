package firstamp.emulate;

import firstamp.emulate.bench.Bench;
import firstamp.emulate.bench.FrontEnd;
import firstamp.emulate.bench.Joined;
import firstamp.emulate.box.Box;
import firstamp.emulate.wave.WaveformBench;
import firstamp.model.ProbePort;
import firstamp.model.samples.Channel;
import firstamp.protocol.values.ChannelScale;
import firstamp.protocol.values.Inputs;
import java.util.ArrayList;
import java.util.List;

/**
 * An emulated probe whose inputs are off, by known shares or as a drawn box, with what a person
 * puts on its clips: for showing and testing its calibration. Not thread-safe.
 */
public final class CalibrationDemo {
  /** Ohm of the resistor in the current step. */
  public static final double RESISTOR_OHM = 10;

  /** Volts of the battery in the volts step (invented). */
  public static final double BATTERY_V = 9.137;

  /** Volts of the cell in the levels step (invented). */
  public static final double CELL_V = 1.533;

  /** Ohm of the two resistors across it; the head clips are across the second one. */
  public static final List<Double> DIVIDER_OHM = List.of(22_000.0, 100.0);

  /** Volts of the supply in the two current steps (invented). */
  public static final List<Double> SUPPLY_V = List.of(3.2, 9.05);

  /** By how much the inputs are really off, percent of the value, channel order (invented). */
  public static final List<Double> GAIN_ERROR_PERCENT =
      List.of(2.1, -1.4, 1.2, -0.9, 0.6, 1.7, -2.0, 0.8);

  /** By how many counts the zeros are off (invented); currents rest above 0, as a real board's. */
  private static final double[] ZERO_COUNTS = {2.6, 2.4, 2.2, 2.7, -1.8, 0.4, -3.1, 1.9};

  private final Clips clips = new Clips();
  private final EmulatedProbe probe;

  /** With a blank probe. */
  public CalibrationDemo(ProbeOptions options) {
    this(options, Box.exact(scales(), null));
  }

  /** With any box. */
  public CalibrationDemo(ProbeOptions options, Box box) {
    probe = new EmulatedProbe(clips, "emulated probe, to be calibrated", options, box);
  }

  /** The line to it. */
  public ProbePort port() {
    return probe;
  }

  /** What the inputs really are. */
  public static List<ChannelScale> scales() {
    List<ChannelScale> scales = new ArrayList<>();
    for (int k = 0; k < ZERO_COUNTS.length; k++) {
      ChannelScale nominal = ChannelScale.nominal().get(k);
      double step = nominal.valuePerCount() * (1 + GAIN_ERROR_PERCENT.get(k) / 100);
      double zero = nominal.zero() - step * ZERO_COUNTS[k];
      scales.add(new ChannelScale((int) Math.round(zero), (int) Math.round(zero + step * 1024)));
    }
    return scales;
  }

  /** True ampere or volt of a mean of counts. */
  public static double truth(Channel channel, double counts) {
    return scales().get(channel.ordinal()).valueAt(counts)
        / firstamp.model.samples.Calibration.basePerUnit(channel);
  }

  /** Volts on the set's terminals and the clips; 0 = clips together. */
  public void volts(double volts) {
    clips.apply(volts, 0, 0, 0);
  }

  /** The cell on the meter clip, the share of it that the two resistors leave on the head clips. */
  public void levels() {
    double share = DIVIDER_OHM.get(1) / (DIVIDER_OHM.get(0) + DIVIDER_OHM.get(1));
    clips.apply(0, 0, CELL_V * share, CELL_V);
  }

  /** The supply joined, the resistor on the set terminals. */
  public void resistor(double supplyV) {
    clips.apply(0, supplyV, 0, 0);
  }

  /** What is on the clips. */
  private static final class Clips implements Bench {
    private double appliedV;
    private double supplyV;
    private double headV;
    private double meterV;
    private Joined joined = Joined.OPEN;

    void apply(double volts, double supply, double head, double meter) {
      appliedV = volts;
      supplyV = supply;
      headV = head;
      meterV = meter;
    }

    @Override
    public double advance(double untilS, boolean watchHardShort) {
      return untilS;
    }

    @Override
    public void join(Joined next) {
      joined = next;
    }

    @Override
    public double value(Channel channel) {
      double outsideOhm = joined == Joined.LOOK ? WaveformBench.LOOK_RESISTOR_OHM : 0;
      double amps = joined == Joined.OPEN ? 0 : supplyV / (RESISTOR_OHM + outsideOhm);
      double volts = appliedV;
      return switch (channel) {
        case I, J -> amps;
        case V -> volts + amps * RESISTOR_OHM;
        // In the other steps head and meter clips stay together: a battery is over their ranges.
        case H -> headV;
        case M -> meterV;
        default -> volts;
      };
    }

    @Override
    public int inputBits() {
      int present = supplyV > 0 ? Inputs.SUPPLY_PRESENT : 0;
      return Inputs.CHASSIS_CLIP_ON | Inputs.ISOLATED_LINK | present;
    }

    @Override
    public double hardShortA() {
      return FrontEnd.HARD_SHORT_A;
    }

    @Override
    public boolean ended() {
      return false;
    }
  }
}
