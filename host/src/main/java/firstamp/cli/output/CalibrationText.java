package firstamp.cli.output;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.analysis.calibrate.CalibrationLine;
import firstamp.analysis.calibrate.UncertaintyBudget;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ChannelScale;
import firstamp.run.calibration.ResistorTrial;
import java.time.Instant;
import java.util.List;
import java.util.Locale;

/** A calibration in words, or as JSON lines of type {@code calibration} and {@code cut}. */
public final class CalibrationText {
  /** Standard uncertainty of the gain of a box that nobody calibrated: 5 % expanded. */
  private static final double NEVER_CALIBRATED = 0.025;

  private final boolean json;
  private final JsonLines lines = new JsonLines(System.out);

  public CalibrationText(boolean json) {
    this.json = json;
  }

  /** What the probe keeps. */
  public void kept(Calibration calibration) {
    if (!json) {
      print(
          "calibration: %s%s",
          calibration.kind().name().toLowerCase(Locale.ROOT),
          calibration.calibratedEpochSeconds() == 0
              ? ", never written"
              : ", written " + Instant.ofEpochSecond(calibration.calibratedEpochSeconds()));
    }
    for (Channel channel : Channel.values()) {
      double gain = calibration.gainUncertainty().get(channel);
      double zero = calibration.offsetUncertaintyCounts().get(channel);
      if (json) {
        lines.print(
            channel(channel, calibration.scale(channel), gain, zero)
                .put("kind", calibration.kind().name().toLowerCase(Locale.ROOT)));
      } else {
        scale(channel, calibration.scale(channel), gain, zero);
      }
    }
  }

  /** What would be written, with its points and where its uncertainty comes from. */
  public void lines(Calibration before, List<CalibrationLine> found) {
    for (CalibrationLine line : found) {
      double change = 100 * (line.scale().perCount() / before.scale(line.channel()).perCount() - 1);
      if (json) {
        lines.print(object(line, change));
        continue;
      }
      scale(line.channel(), line.scale(), line.budget().gainShare(), line.budget().zeroCounts());
      print("    gain against what the box has: %+.2f %%", change);
      String unit = line.channel().quantity().unit();
      for (int k = 0; k < line.points().size(); k++) {
        print(
            "    at %10.5g %s it read %8.2f counts, off the line by %+.3g %s",
            line.points().get(k).value(),
            unit,
            line.points().get(k).second().meanCounts(),
            line.residuals().get(k),
            unit);
      }
      for (UncertaintyBudget.Line part : line.budget().lines()) {
        print(
            "    %-14s %s  gain %.4f %%  zero %.3f counts",
            part.cause(), part.type(), 100 * part.gainShare(), part.zeroCounts());
      }
    }
  }

  /** What the trip test has tried, and what it has not. */
  public void cut(ResistorTrial.Cut cut) {
    if (json) {
      ObjectNode node = JsonLines.object("cut");
      node.put("works", cut.works());
      node.put("afterMs", cut.afterMs());
      node.put("limitA", cut.limitA());
      if (Double.isFinite(cut.currentA())) {
        node.put("currentA", cut.currentA());
      }
      node.put("currentGone", cut.gone());
      lines.print(node);
      return;
    }
    String current =
        Double.isFinite(cut.currentA())
            ? String.format(Locale.ROOT, "%.1f A ", cut.currentA())
            : "";
    print(
        "It switched %soff in %.1f ms. %s",
        current,
        cut.afterMs(),
        cut.works()
            ? "Not tried: the 10 A path."
            : cut.gone()
                ? "That is slower than 1 ms: do not power up a set with it."
                : "But current still flowed: unplug the supply now.");
  }

  private ObjectNode object(CalibrationLine line, double change) {
    ObjectNode node =
        channel(
            line.channel(), line.scale(), line.budget().gainShare(), line.budget().zeroCounts());
    node.put("gainChangePercent", change);
    ArrayNode points = node.putArray("points");
    for (int k = 0; k < line.points().size(); k++) {
      points
          .addObject()
          .put("value", line.points().get(k).value())
          .put("meanCounts", line.points().get(k).second().meanCounts())
          .put("residual", line.residuals().get(k));
    }
    ArrayNode budget = node.putArray("budget");
    for (UncertaintyBudget.Line part : line.budget().lines()) {
      budget
          .addObject()
          .put("cause", part.cause())
          .put("kind", String.valueOf(part.type()))
          .put("gainPercent", 100 * part.gainShare())
          .put("zeroCounts", part.zeroCounts());
    }
    return node;
  }

  private static ObjectNode channel(
      Channel channel, ChannelScale scale, double gainShare, double zeroCounts) {
    ObjectNode node = JsonLines.object("calibration");
    node.put("channel", channel.name());
    node.put("unit", channel.quantity().unit());
    node.put("atZero", scale.zero());
    node.put("atFull", scale.full());
    node.put("gainPercentPlusMinus", 200 * gainShare);
    node.put("zeroCountsPlusMinus", 2 * zeroCounts);
    return node;
  }

  private void scale(Channel channel, ChannelScale scale, double gainShare, double zeroCounts) {
    print(
        "%-2s  %+.5g to %+.5g %s, gain +-%.2f %%%s, zero +-%.2f counts (k = 2)",
        channel,
        scale.zero(),
        scale.full(),
        channel.quantity().unit(),
        200 * gainShare,
        gainShare >= NEVER_CALIBRATED ? " (not calibrated)" : "",
        2 * zeroCounts);
  }

  private static void print(String format, Object... values) {
    System.out.println(String.format(Locale.ROOT, format, values));
  }
}
