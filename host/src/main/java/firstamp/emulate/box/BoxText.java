package firstamp.emulate.box;

import firstamp.model.samples.Channel;
import firstamp.protocol.values.CalibrationData;
import firstamp.protocol.values.ChannelScale;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A box in the keys of a front-end file, for the simulated chip. */
public final class BoxText {
  private BoxText() {}

  /** The members that describe the box, without braces round them. */
  public static String members(Box box) {
    List<String> channels = new ArrayList<>();
    List<String> kept = new ArrayList<>();
    for (Channel channel : Channel.values()) {
      BoxInput input = box.input(channel);
      String more = number(",\"bowCounts\":%.6g", input.bowCounts());
      if (input.lowestCounts() >= 0) {
        more += number(",\"lowestCounts\":%.6g", input.lowestCounts());
      }
      channels.add(scale(channel, input.scale()) + more + "}");
      if (box.kept() != null) {
        kept.add(kept(channel, box.kept()));
      }
    }
    return "\"channels\":{"
        + String.join(",", channels)
        + "},"
        + (kept.isEmpty() ? "\"calibrated\":false" : "\"kept\":{" + String.join(",", kept) + "}")
        + number(",\"clockPercent\":%.6g", 100 * box.clockShare());
  }

  private static String kept(Channel channel, CalibrationData data) {
    int at = channel.ordinal();
    return scale(channel, data.scales().get(at))
        + number(",\"gainPercentPlusMinus\":%.3f", data.gainUncertaintyE5().get(at) / 500.0)
        + number(",\"zeroCountsPlusMinus\":%.2f}", data.zeroUncertaintyHundredths().get(at) / 50.0);
  }

  /** In base units of the wire: whole numbers. */
  private static String scale(Channel channel, ChannelScale scale) {
    String unit =
        channel == Channel.H ? "nV" : channel.quantity() == Channel.Quantity.AMPERE ? "uA" : "uV";
    return String.format(
        Locale.ROOT,
        "\"%s\":{\"unit\":\"%s\",\"atZero\":%d,\"atFull\":%d",
        channel,
        unit,
        scale.zero(),
        scale.full());
  }

  private static String number(String format, double value) {
    return String.format(Locale.ROOT, format, value);
  }
}
