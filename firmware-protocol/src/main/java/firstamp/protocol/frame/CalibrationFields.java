package firstamp.protocol.frame;

import firstamp.protocol.values.CalibrationData;
import firstamp.protocol.values.ChannelScale;
import firstamp.protocol.values.SlotPlan;
import java.util.ArrayList;
import java.util.List;

/** The fields of a calibration, read and written by both sides. */
final class CalibrationFields {
  private CalibrationFields() {}

  static CalibrationData read(PayloadReader in) {
    return new CalibrationData(in.u32(), readScales(in), readU16s(in), readU16s(in));
  }

  static PayloadWriter write(PayloadWriter out, CalibrationData data) {
    out.u32(data.calibratedEpochSeconds());
    writeScales(out, data.scales());
    data.gainUncertaintyE5().forEach(out::u16);
    data.zeroUncertaintyHundredths().forEach(out::u16);
    return out;
  }

  static List<ChannelScale> readScales(PayloadReader in) {
    List<ChannelScale> scales = new ArrayList<>(SlotPlan.CHANNELS);
    for (int channel = 0; channel < SlotPlan.CHANNELS; channel++) {
      scales.add(new ChannelScale(in.i32(), in.i32()));
    }
    return scales;
  }

  static void writeScales(PayloadWriter out, List<ChannelScale> scales) {
    for (ChannelScale scale : scales) {
      out.u32(scale.zero()).u32(scale.full());
    }
  }

  private static List<Integer> readU16s(PayloadReader in) {
    List<Integer> values = new ArrayList<>(SlotPlan.CHANNELS);
    for (int channel = 0; channel < SlotPlan.CHANNELS; channel++) {
      values.add(in.u16());
    }
    return values;
  }
}
