package firstamp.emulate.scenario;

import firstamp.emulate.circuit.SetValues;

/** The values of invented sets when nothing is wrong with them. Data for the demo and for tests. */
final class InventedSets {
  static final double NEVER = Double.POSITIVE_INFINITY;

  private InventedSets() {}

  /** A dictation unit on a bench supply of 12 V. */
  static SetValues larch() {
    SetValues set = new SetValues();
    set.supplyLimitA = 2.5;
    return set;
  }

  /** The same set on a bench supply that is turned down, with little behind its terminals. */
  static SetValues larchOnLittle() {
    SetValues set = new SetValues();
    set.supplyLimitA = 0.45;
    set.supplyFarad = 22e-6;
    return set;
  }

  /** Transformer and bridge rectifier in the set; the probe sits behind the reservoir capacitor. */
  static SetValues larchOnMains() {
    SetValues set = new SetValues();
    set.emfV = 15;
    set.rectifierPaths = 2;
    set.supplyOhm = 3;
    set.supplyLimitA = NEVER;
    set.supplyFarad = 2200e-6;
    set.filterFarad = 470e-6;
    set.railFarad = 470e-6;
    set.dropperOhm = 60;
    set.reservoirClipOn = true;
    return set;
  }

  /** A positive-chassis pocket radio: 9 V, germanium, a few milliampere. */
  static SetValues ostrel() {
    SetValues set = new SetValues();
    set.emfV = 9.02;
    set.supplyLimitA = 0.2;
    set.supplyFarad = 100e-6;
    set.idleOhm = 3600;
    set.filterOhm = 22;
    set.filterFarad = 100e-6;
    set.dropperOhm = 220;
    set.railFarad = 100e-6;
    set.railLoadOhm = 2200;
    set.stagesFromV = 2;
    set.stagesSiemens = 0.0006;
    set.railSign = -1;
    set.motor = false;
    set.toneFromS = NEVER;
    set.headHumRmsV = 0;
    set.meterHumRmsV = 0;
    set.chainFullV = 7.5;
    return set;
  }

  /** A gramophone amplifier with its output stage between two halves: nothing but music at it. */
  static SetValues quandel() {
    SetValues set = new SetValues();
    set.supplyLimitA = 2.5;
    set.motor = false;
    set.toneFromS = NEVER;
    set.outputClipOn = true;
    set.outputOffsetV = 0.02;
    set.thumpV = 3;
    return set;
  }
}
