package firstamp.worlds;

import java.util.ArrayList;
import java.util.List;

/**
 * A supply with inner resistance, a current limit and a capacitor of its own, the probe's limiter,
 * and a set of one reservoir, loads and rails behind resistors. Integrated step by step, each node
 * exactly over a step in which the currents into it stand. Not thread-safe.
 */
final class Feed {
  /** To what the soldered box limits the current (data of its drawing). */
  static final double LIMITER_A = 13;

  private static final int PARTS = 8;

  /** A load on the set's supply: its current from volts and time. It may keep a state. */
  interface Load {
    double amperes(double volts, double seconds, double stepS);
  }

  /** A rail behind a resistor with a capacitor and a load. */
  static final class Rail {
    final String column;
    double ohm;
    double farad;
    Load load;
    double volts;

    Rail(String column, double ohm, double farad, Load load) {
      this.column = column;
      this.ohm = ohm;
      this.farad = farad;
      this.load = load;
    }
  }

  /** Volts of the source before its inner resistance, and who changes it with time. */
  interface Source {
    double volts(double seconds);
  }

  Source source;
  double sourceOhm = 0.1;
  double limitA = 1000;
  double reservoirF = 1e-6;
  double startV;
  final List<Load> loads = new ArrayList<>();
  final List<Rail> rails = new ArrayList<>();

  /** A resistance straight across the reservoir, such as a short. */
  interface Shunt {
    double siemens(double seconds);
  }

  Shunt shunt = seconds -> 0;

  /** Something done at each step before it, such as a wire that comes off. */
  interface Hand {
    void at(double seconds);
  }

  Hand hand = seconds -> {};

  Feed(Source source) {
    this.source = source;
  }

  /** Fills supply and rails of a trace. */
  void run(Trace trace) {
    double[] supplyV = trace.column("supply_V");
    double[] supplyA = trace.column("supply_A");
    List<double[]> outs = new ArrayList<>();
    for (Rail rail : rails) {
      outs.add(trace.column(rail.column));
    }
    double step = Trace.STEP_S / PARTS;
    double volts = startV;
    for (int row = 0; row < trace.length(); row++) {
      double charge = 0;
      for (int part = 0; part < PARTS; part++) {
        double now = row * Trace.STEP_S + part * step;
        hand.at(now);
        double out = 0;
        for (Load load : loads) {
          out += load.amperes(volts, now, step);
        }
        for (Rail rail : rails) {
          out += (volts - rail.volts) / rail.ohm;
        }
        double before = volts;
        double across = shunt.siemens(now);
        double most = Math.min(limitA, LIMITER_A);
        double top = source.volts(now) - most * sourceOhm;
        if (volts < top - 1e-6) {
          volts = Math.min(top, settle(volts, most - out, across, step));
        } else {
          double feeds = source.volts(now) / sourceOhm;
          volts = settle(volts, feeds - out, across + 1 / sourceOhm, step);
        }
        volts = Math.max(0, volts);
        double in = reservoirF * (volts - before) / step + out + across * (volts + before) / 2;
        charge += in * step;
        for (Rail rail : rails) {
          double draws = rail.load.amperes(rail.volts, now, step);
          double rest = before - draws * rail.ohm;
          rail.volts =
              rest
                  + (rail.volts - rest) * Math.exp(-step / (rail.ohm * Math.max(rail.farad, 1e-9)));
        }
      }
      supplyV[row] = volts;
      supplyA[row] = Math.max(0, charge / Trace.STEP_S);
      for (int k = 0; k < rails.size(); k++) {
        outs.get(k)[row] = rails.get(k).volts;
      }
    }
  }

  /** Volts of the reservoir after a step with this current into it and this much across it. */
  private double settle(double volts, double amperes, double siemens, double step) {
    if (siemens <= 0) {
      return volts + amperes * step / reservoirF;
    }
    double rest = amperes / siemens;
    return rest + (volts - rest) * Math.exp(-step * siemens / reservoirF);
  }

  static Load ohms(double ohm) {
    return (volts, seconds, step) -> volts / ohm;
  }

  /** A stage that draws about the same at any volts over one volt. */
  static Load steady(double amperes) {
    return (volts, seconds, step) -> amperes * Math.tanh(Math.max(volts, 0) / 1.5);
  }
}
