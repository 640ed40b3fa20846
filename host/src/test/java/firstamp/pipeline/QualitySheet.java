package firstamp.pipeline;

import firstamp.model.JobSheet;
import firstamp.sheet.Defaults;
import firstamp.sheet.SheetException;
import firstamp.sheet.SheetReader;

/** The sheet of generated power-ups: every rule is asked for. */
final class QualitySheet {
  static final double INRUSH_A = 4.5;
  static final double CREEP_A_PER_MIN = 0.05;
  static final double RIPPLE1_V = 0.05;
  static final double RIPPLE2_V = 0.4;
  static final double OFFSET_V = 0.1;

  /** -70 dBV. */
  static final double HUM_V = Math.pow(10, -70.0 / 20);

  private QualitySheet() {}

  static JobSheet filled() {
    String json =
        "{\"sheet\":1,\"set\":{\"name\":\"Generated set (invented)\",\"kind\":\"recorder\"},"
            + "\"supply\":{\"kind\":\"bench\",\"nominalV\":12,\"limitA\":1.5,\"fuseA\":1.5,"
            + "\"capacitanceUf\":2200},"
            + "\"limits\":{\"inrushA\":4.5,\"inrushMs\":60,\"runningA\":1.0,\"i2tA2s\":0.6},"
            + "\"rails\":[{\"input\":1,\"name\":\"B1\",\"nominalV\":8.2,\"tolerancePercent\":5,"
            + "\"settleMs\":300,\"overV\":9.8,\"rippleMaxVrms\":0.05},"
            + "{\"input\":2,\"name\":\"B0\",\"nominalV\":12,\"tolerancePercent\":10,"
            + "\"settleMs\":300,\"overV\":16,\"rippleMaxVrms\":0.4,\"capacitanceUf\":2200,"
            + "\"rectifier\":\"full\"}],"
            + "\"levels\":{\"toneHz\":400,\"headOhm\":10,\"expectedDb\":38,\"marginDb\":6,"
            + "\"meterSignalDbv\":-30,\"fromMs\":1500},"
            + "\"rules\":{\"current-creep\":{\"overAPerMin\":0.05},\"hum\":{\"aboveDbv\":-70},"
            + "\"output-offset\":{\"input\":3,\"overV\":0.1}}}";
    try {
      return Defaults.fill(SheetReader.parse("generated.json", json).sheet());
    } catch (SheetException defect) {
      throw new AssertionError(defect);
    }
  }
}
