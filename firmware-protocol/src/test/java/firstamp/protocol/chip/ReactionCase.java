package firstamp.protocol.chip;

import firstamp.protocol.codes.TripCause;
import firstamp.protocol.values.RailWindow;
import firstamp.protocol.values.TripLimits;
import java.util.Locale;

/**
 * One kind of trip: what steps, which limit it passes, and how long the probe may take for it. The
 * scales are the nominal ones of wire-format.md section 2.
 */
enum ReactionCase {
  RUNNING_I_3("supply_A", 0.1, 3, 1, TripCause.RUNNING, 0, 830),
  RUNNING_I_2("supply_A", 0.1, 3, 1, TripCause.RUNNING, 0, 580),
  RUNNING_I_1("supply_A", 0.1, 3, 1, TripCause.RUNNING, 0, 330),
  INRUSH_I_3("supply_A", 0.1, 3, 1, TripCause.INRUSH, 0, 830),
  RUNNING_J_2("supply_A", 0.1, 0.3, 0.2, TripCause.RUNNING, 0, 4100),
  RAIL_3("rail1_V", 8, 12, 10, TripCause.OVER_VOLTAGE, 0, 3100),
  RAIL_1("rail1_V", 8, 12, 10, TripCause.OVER_VOLTAGE, 0, 1100),
  RAIL_LOW_1("rail1_V", -8, -12, -10, TripCause.OVER_VOLTAGE, 0, 1100),
  SUPPLY_V_3("supply_V", 12, 20, 15, TripCause.OVER_VOLTAGE, 0, 6100),
  SUPPLY_V_1("supply_V", 12, 20, 15, TripCause.OVER_VOLTAGE, 0, 2100),
  /**
   * 3 A are 246 counts, 82 may flow for ever: each I conversion adds 246^2 - 82^2 = 53 792. The
   * budget of 10 758 400 is the integral over 200 intervals of 250 us, 50 ms; the sum may come one
   * interval before or after it, and 80 us go into the conversion that decides.
   */
  I2T("supply_A", 0.1, 3, 1, TripCause.I2T, 49_750, 50_330),
  HARD_SHORT("supply_A", 0.1, 11, 10, TripCause.HARD_SHORT, 1000, 1130);

  final String column;
  final TripCause cause;
  final double soonestMicros;
  final double latestMicros;
  private final double before;
  private final double after;
  private final double level;

  ReactionCase(
      String column,
      double before,
      double after,
      double level,
      TripCause cause,
      double soonestMicros,
      double latestMicros) {
    this.column = column;
    this.before = before;
    this.after = after;
    this.level = level;
    this.cause = cause;
    this.soonestMicros = soonestMicros;
    this.latestMicros = latestMicros;
  }

  /** The column and level that the simulator is to watch. */
  String cross() {
    return column + "=" + level;
  }

  /** A quiet set whose column steps at the given time, within a microsecond. */
  String waveform(double stepSeconds) {
    return "t_s,supply_V,supply_A,rail1_V\n"
        + row(0, before)
        + row(stepSeconds, before)
        + row(stepSeconds + 1e-6, after);
  }

  private String row(double seconds, double value) {
    return String.format(
        Locale.ROOT,
        "%.9f,%s,%s,%s%n",
        seconds,
        column.equals("supply_V") ? value : 12,
        column.equals("supply_A") ? value : 0.1,
        column.equals("rail1_V") ? value : 8);
  }

  TripLimits limits() {
    TripLimits.Builder limits = TripLimits.builder().silenceMillis(10_000);
    return switch (this) {
      case RUNNING_I_3 -> limits.running(82, 0).confirmCurrent(3, 2).build();
      case RUNNING_I_2 -> limits.running(82, 0).confirmCurrent(2, 2).build();
      case RUNNING_I_1 -> limits.running(82, 0).confirmCurrent(1, 2).build();
      case INRUSH_I_3 -> limits.inrush(5000, 82).confirmCurrent(3, 2).build();
      case RUNNING_J_2 -> limits.running(0, 512).confirmCurrent(3, 2).build();
      case RAIL_3 -> limits.rail(1, new RailWindow(0, 768)).confirmVolts(3, 3).build();
      case RAIL_1 -> limits.rail(1, new RailWindow(0, 768)).confirmVolts(1, 1).build();
      case RAIL_LOW_1 -> limits.rail(1, new RailWindow(256, 1023)).confirmVolts(1, 1).build();
      case SUPPLY_V_3 -> limits.overV(256).confirmVolts(3, 3).build();
      case SUPPLY_V_1 -> limits.overV(256).confirmVolts(1, 1).build();
      case I2T -> limits.i2t(10_758_400, 82).build();
      case HARD_SHORT -> limits.build();
    };
  }
}
