package firstamp.emulate.wave;

import firstamp.emulate.bench.Bench;
import firstamp.emulate.bench.FrontEnd;
import firstamp.emulate.bench.Joined;
import firstamp.model.samples.Channel;
import firstamp.protocol.values.Inputs;

/** A waveform file at the clips. */
public final class WaveformBench implements Bench {
  public static final double LOOK_RESISTOR_OHM = 330;

  private static final int[] COLUMN_OF = {
    WaveformFile.SUPPLY_A,
    WaveformFile.SUPPLY_A,
    WaveformFile.SUPPLY_V,
    WaveformFile.RAIL1_V,
    WaveformFile.RAIL1_V + 1,
    WaveformFile.RAIL1_V + 2,
    WaveformFile.HEAD_V,
    WaveformFile.METER_V
  };

  private final WaveformFile file;
  private final FrontEnd frontEnd;
  private final double[] from = new double[COLUMN_OF.length];
  private Joined joined = Joined.OPEN;
  private double nowS;
  private double sinceS;
  private int changesDone;
  private int inputBits;
  private double hardShortA;

  public WaveformBench(WaveformFile file, FrontEnd frontEnd) {
    this.file = file;
    this.frontEnd = frontEnd;
    this.inputBits = frontEnd.inputBits();
    this.hardShortA = frontEnd.hardShortA();
  }

  @Override
  public double advance(double untilS, boolean watchHardShort) {
    if (watchHardShort && joined == Joined.CLOSED && file.has(WaveformFile.SUPPLY_A)) {
      double at = file.crossing(WaveformFile.SUPPLY_A, hardShortA, nowS - sinceS, untilS - sinceS);
      if (!Double.isNaN(at)) {
        moveTo(sinceS + at);
        return nowS;
      }
    }
    moveTo(untilS);
    return untilS;
  }

  private void moveTo(double seconds) {
    nowS = Math.max(nowS, seconds);
    while (changesDone < frontEnd.changes().size()
        && frontEnd.changes().get(changesDone).atS() <= nowS) {
      FrontEnd.Change change = frontEnd.changes().get(changesDone++);
      if (change.bit() == 0) {
        hardShortA = change.hardShortA();
      } else {
        inputBits = change.on() ? inputBits | change.bit() : inputBits & ~change.bit();
      }
    }
  }

  @Override
  public void join(Joined next) {
    if (next == joined) {
      return;
    }
    for (Channel channel : Channel.values()) {
      double value = value(channel);
      from[channel.ordinal()] = Double.isNaN(value) ? 0 : value;
    }
    joined = next;
    sinceS = nowS;
  }

  @Override
  public double value(Channel channel) {
    int column = COLUMN_OF[channel.ordinal()];
    boolean connected = file.has(column);
    boolean rail = channel == Channel.R1 || channel == Channel.R2 || channel == Channel.R3;
    if (rail && !connected) {
      return Double.NaN;
    }
    double elapsedS = nowS - sinceS;
    return switch (joined) {
      case CLOSED -> connected ? file.at(column, elapsedS) : 0;
      case LOOK -> inLook(channel, elapsedS);
      case OPEN ->
          rail || channel == Channel.V
              ? from[channel.ordinal()] * Math.exp(-elapsedS / frontEnd.decayS())
              : 0;
    };
  }

  /**
   * A resistance and a capacitance behind the look resistor, charged from what was left on them.
   */
  private double inLook(Channel channel, double elapsedS) {
    double ohm = frontEnd.lookOhm();
    double endV = frontEnd.lookSupplyV() * ohm / (ohm + LOOK_RESISTOR_OHM);
    double tauS = frontEnd.lookFarad() * ohm * LOOK_RESISTOR_OHM / (ohm + LOOK_RESISTOR_OHM);
    double startV = from[Channel.V.ordinal()];
    double volts = tauS > 0 ? endV + (startV - endV) * Math.exp(-elapsedS / tauS) : endV;
    return switch (channel) {
      case V -> volts;
      case I, J -> (frontEnd.lookSupplyV() - volts) / LOOK_RESISTOR_OHM;
      default -> 0;
    };
  }

  @Override
  public boolean joined(Channel level) {
    return file.has(COLUMN_OF[level.ordinal()]);
  }

  @Override
  public int inputBits() {
    return inputBits;
  }

  @Override
  public double hardShortA() {
    return hardShortA;
  }

  @Override
  public boolean ended() {
    return joined == Joined.CLOSED && nowS - sinceS > file.lastS();
  }

  /** The bit of a digital input by its key in the front-end file, 0 = no such key. */
  static int bitOf(String key) {
    return switch (key) {
      case "chassisClip" -> Inputs.CHASSIS_CLIP_ON;
      case "supplyPresent" -> Inputs.SUPPLY_PRESENT;
      case "supplyReversed" -> Inputs.SUPPLY_REVERSED;
      case "button" -> Inputs.BUTTON_DOWN;
      case "pedal" -> Inputs.PEDAL_DOWN;
      case "isolatedLink" -> Inputs.ISOLATED_LINK;
      default -> 0;
    };
  }
}
