package firstamp.emulate.wave;

import firstamp.emulate.box.Box;
import firstamp.emulate.box.BoxInput;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.text.Wording.Phrase;
import firstamp.protocol.values.CalibrationData;
import firstamp.protocol.values.ChannelScale;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** The keys of a front-end file that describe the box: what its inputs do, what it keeps. */
final class BoxKeys {
  private static final double LONGEST_BASE = Integer.MAX_VALUE;
  private static final double MOST_BOW_COUNTS = 20;
  private static final double MOST_CLOCK_PERCENT = 2;

  /** What a calibration states that is not given: 1e-5 of the gain, 1/100 count. */
  private static final int GAIN_E5 = 100;

  private static final int ZERO_HUNDREDTHS = 50;

  /** Of I, J and V what a file leaves out is exact, with 5 counts when nothing is there. */
  private static final List<BoxInput> LEFT_OUT = leftOut();

  private final StrictJson json;
  private final List<BoxInput> inputs = new ArrayList<>(LEFT_OUT);
  private final ChannelScale[] keptScales = new ChannelScale[inputs.size()];
  private final List<Integer> gainE5 = new ArrayList<>(Collections.nCopies(8, GAIN_E5));
  private final List<Integer> zeroHundredths =
      new ArrayList<>(Collections.nCopies(8, ZERO_HUNDREDTHS));
  private Boolean calibrated;
  private double clockShare;

  BoxKeys(StrictJson json) {
    this.json = json;
  }

  private static List<BoxInput> leftOut() {
    List<BoxInput> all = new ArrayList<>(Box.ideal().inputs());
    all.set(0, BoxInput.exact(new ChannelScale(-61_035, 12_438_965)));
    all.set(1, BoxInput.exact(new ChannelScale(-1_953, 398_047)));
    all.set(2, BoxInput.exact(new ChannelScale(-292_969, 59_707_031)));
    return List.copyOf(all);
  }

  /** What was said; it keeps its own scales as calibration unless that is denied. */
  Box box() {
    if (Boolean.FALSE.equals(calibrated)) {
      return new Box(inputs, clockShare, null);
    }
    List<ChannelScale> scales = new ArrayList<>();
    for (int k = 0; k < keptScales.length; k++) {
      scales.add(keptScales[k] == null ? inputs.get(k).scale() : keptScales[k]);
    }
    return new Box(inputs, clockShare, new CalibrationData(0, scales, gainE5, zeroHundredths));
  }

  void channels() throws IOException {
    json.object("channels", this::channel);
  }

  void kept() throws IOException {
    json.object("kept", this::keptChannel);
  }

  void calibrated() throws IOException {
    calibrated = json.truth("calibrated");
  }

  void clock() throws IOException {
    clockShare = json.number("clockPercent", -MOST_CLOCK_PERCENT, MOST_CLOCK_PERCENT) / 100;
  }

  private void channel(String key) throws IOException {
    Channel channel = known("channels", key);
    String field = "channels." + key;
    double[] more = {0, Double.NEGATIVE_INFINITY};
    ChannelScale scale =
        scale(
            channel,
            field,
            inner -> {
              switch (inner) {
                case "bowCounts" ->
                    more[0] = json.number(field + ".bowCounts", -MOST_BOW_COUNTS, MOST_BOW_COUNTS);
                case "lowestCounts" -> more[1] = json.number(field + ".lowestCounts", 0, 1023);
                default ->
                    throw json.unknown(
                        field + "." + inner, "unit, atZero, atFull, bowCounts, lowestCounts");
              }
            });
    inputs.set(channel.ordinal(), new BoxInput(scale, more[0], more[1]));
  }

  private void keptChannel(String key) throws IOException {
    Channel channel = known("kept", key);
    int at = channel.ordinal();
    String field = "kept." + key;
    keptScales[at] =
        scale(
            channel,
            field,
            inner -> {
              switch (inner) {
                case "gainPercentPlusMinus" ->
                    gainE5.set(at, half(json.number(field + "." + inner, 0, 100) * 1000));
                case "zeroCountsPlusMinus" ->
                    zeroHundredths.set(at, half(json.number(field + "." + inner, 0, 1000) * 100));
                default ->
                    throw json.unknown(
                        field + "." + inner,
                        "unit, atZero, atFull, gainPercentPlusMinus, zeroCountsPlusMinus");
              }
            });
  }

  /** An expanded uncertainty (k = 2) to a standard one. */
  private static int half(double expanded) {
    return (int) Math.round(expanded / 2);
  }

  private Channel known(String where, String key) throws IOException {
    for (Channel each : Channel.values()) {
      if (each.name().equals(key)) {
        return each;
      }
    }
    throw json.unknown(where + "." + key, "I J V R1 R2 R3 H M");
  }

  private ChannelScale scale(Channel channel, String field, StrictJson.Member further)
      throws IOException {
    double[] ends = {Double.NaN, Double.NaN};
    double[] factor = {1};
    json.object(
        field,
        inner -> {
          switch (inner) {
            case "unit" -> factor[0] = factor(channel, field + ".unit");
            case "atZero" -> ends[0] = json.number(field + ".atZero", -1e10, 1e10);
            case "atFull" -> ends[1] = json.number(field + ".atFull", -1e10, 1e10);
            default -> further.take(inner);
          }
        });
    if (Double.isNaN(ends[0]) || Double.isNaN(ends[1]) || ends[0] == ends[1]) {
      throw json.bad(field, new Phrase("incomplete"), new Phrase("both-ends"));
    }
    double base = Calibration.basePerUnit(channel) * factor[0];
    return new ChannelScale(base(field, ends[0] * base), base(field, ends[1] * base));
  }

  private int base(String field, double value) throws WaveformException {
    if (Math.abs(value) > LONGEST_BASE) {
      throw json.bad(field, new Phrase("out-of-range"), new Phrase("either-sign"));
    }
    return (int) Math.round(value);
  }

  private double factor(Channel channel, String field) throws IOException {
    String unit = channel.quantity().unit();
    String text = json.text();
    if (text.equals(unit)) {
      return 1;
    } else if (text.equals("m" + unit)) {
      return 1e-3;
    } else if (text.equals("u" + unit)) {
      return 1e-6;
    } else if (text.equals("n" + unit)) {
      return 1e-9;
    }
    throw json.bad(field, json.found(), new Phrase("one-of", unit));
  }
}
