package firstamp.sheet;

/** Texts of job sheets for tests. */
final class Sheets {
  /** The example of the guide: an invented dictation unit. */
  static final String DICTATION_UNIT =
      """
      {"sheet":1,"set":{"name":"Larch D2 dictation unit (invented)","kind":"recorder","chassis":"negative"},
       "supply":{"kind":"bench","probeSits":"supply-lead","nominalV":12,"minV":11,"maxV":13,"limitA":1.5,"fuseA":1,"look":true},
       "limits":{"inrushA":4.5,"inrushMs":60,"runningA":1.0,"i2tA2s":0.3},
       "rails":[{"input":1,"name":"B1","nominalV":8.2,"tolerancePercent":5,"settleMs":300,"overV":9.8,"rippleMaxVrms":0.05,"capacitanceUf":2200,"rectifier":"none"}],
       "levels":{"toneHz":400,"headOhm":10,"expectedDb":38,"marginDb":6,"meterSignalDbv":-30,"fromMs":1500},
       "rules":{"short":{"belowOhm":2.5,"onDelayMs":100,"action":"off"}}}
      """;

  private Sheets() {}

  /** A sheet with only what is needed, and something more behind the supply's volts. */
  static String minimal(String more) {
    return "{\"set\":{\"name\":\"Set\"},\n \"supply\":{\"nominalV\":12}" + more + "}";
  }
}
