package firstamp.cli.output;

import firstamp.log.LogException;
import firstamp.log.PowerUpHeader;
import firstamp.log.PowerUpReader;
import firstamp.log.stream.StreamSink;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import firstamp.model.samples.ReadingReducer;
import firstamp.model.samples.SamplePlan;
import firstamp.model.samples.Scaling;
import firstamp.model.samples.Zero;
import firstamp.pipeline.ReadingFigures;
import java.util.List;

/**
 * A power-up as a table: one row per reading (10 ms) in units of the trade, in constant memory.
 *
 * <p>The columns up to {@code meter_V} are those of a waveform file. Time counts from the first
 * closing of the switch, or from the start of the log if it never closed.
 */
final class PowerUpTable {
  /** Heads of the columns, units in their names. */
  static final List<String> COLUMNS =
      List.of(
          "t_s",
          "supply_V",
          "supply_A",
          "rail1_V",
          "rail2_V",
          "rail3_V",
          "head_V",
          "meter_V",
          "supply_A_highest",
          "head_V_spread_rms",
          "meter_V_spread_rms");

  private final PowerUpReader reader;
  private final PowerUpHeader header;

  PowerUpTable(PowerUpReader reader) throws LogException {
    this.reader = reader;
    this.header = reader.header();
  }

  /**
   * Takes the rows, in the order of {@link #COLUMNS}; NaN = not measured. The array is used again.
   */
  @FunctionalInterface
  interface Rows {
    void row(double[] values);
  }

  /** Gives every row. */
  void forEach(Rows rows) throws LogException {
    reader.replay(new Walk(zeroMicros(), rows));
  }

  /** The probe time that counts as zero: the switch closes, or the power-up begins. */
  long zeroMicros() throws LogException {
    for (ProbeEvent event : reader.events()) {
      if (event instanceof ProbeEvent.SwitchChanged change && change.state() == SwitchState.ON) {
        return change.micros();
      }
    }
    long[] extent = reader.extent();
    return extent[0] == extent[1] ? 0 : SamplePlan.microsOf(extent[0]);
  }

  /** Turns readings into rows. */
  private final class Walk implements StreamSink {
    private final long zeroMicros;
    private final Rows rows;
    private final double[] values = new double[COLUMNS.size()];
    private final ReadingReducer reducer = new ReadingReducer(this::reading);
    private Scaling scaling = new Scaling(header.hello().calibration(), Zero.NONE);

    Walk(long zeroMicros, Rows rows) {
      this.zeroMicros = zeroMicros;
      this.rows = rows;
    }

    @Override
    public void conversions(ConversionBlock block) {
      reducer.accept(block.firstIndex(), block.counts(), 0, block.counts().length);
    }

    @Override
    public void reading(Reading reading) {
      values[0] = (reading.startMicros() - zeroMicros) / 1e6;
      values[1] = scaling.supplyV(reading);
      values[2] = scaling.supplyA(reading);
      values[3] = rail(reading, 1);
      values[4] = rail(reading, 2);
      values[5] = rail(reading, 3);
      values[6] = scaling.mean(reading, Channel.H);
      values[7] = scaling.mean(reading, Channel.M);
      values[8] = scaling.value(Channel.I, reading.highest(Channel.I));
      values[9] = spread(reading, Channel.H);
      values[10] = spread(reading, Channel.M);
      rows.row(values);
    }

    /** A clip that is joined to nothing has no volts, whatever its input reads. */
    private double rail(Reading reading, int rail) {
      return ReadingFigures.clipOn(reading, rail) ? scaling.railV(reading, rail) : Double.NaN;
    }

    private double spread(Reading reading, Channel channel) {
      return reading.deviationCounts(channel)
          * Math.abs(header.hello().calibration().scale(channel).perCount());
    }

    @Override
    public void event(ProbeEvent event) {
      if (event instanceof ProbeEvent.Looked looked) {
        scaling = new Scaling(header.hello().calibration(), looked.look().zero());
      }
    }
  }
}
