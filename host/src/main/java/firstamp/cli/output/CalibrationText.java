package firstamp.cli.output;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.analysis.calibrate.CalibrationLine;
import firstamp.analysis.calibrate.UncertaintyBudget;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ChannelScale;
import firstamp.model.text.Worded;
import firstamp.run.calibration.ResistorTrial;
import java.time.Instant;
import java.util.List;
import java.util.Locale;

/** A calibration in words, or as JSON lines of type {@code calibration} and {@code cut}. */
public final class CalibrationText {
  /** Standard uncertainty of the gain of a box that nobody calibrated: 5 % expanded. */
  private static final double NEVER_CALIBRATED = 0.025;

  private final boolean json;
  private final Speech speech;
  private final JsonLines lines = new JsonLines(System.out);

  public CalibrationText(boolean json, Speech speech) {
    this.speech = speech;
    this.json = json;
  }

  /** What the probe keeps. */
  public void kept(Calibration calibration) {
    if (!json) {
      String kind = speech.in(Said.of("calibration.kind." + kind(calibration)));
      speech.out(
          calibration.calibratedEpochSeconds() == 0
              ? Said.of("calibration.never", kind)
              : Said.of(
                  "calibration.written",
                  kind,
                  Instant.ofEpochSecond(calibration.calibratedEpochSeconds())));
    }
    for (Channel channel : Channel.values()) {
      double gain = calibration.gainUncertainty().get(channel);
      double zero = calibration.offsetUncertaintyCounts().get(channel);
      if (json) {
        lines.print(
            channel(channel, calibration.scale(channel), gain, zero)
                .put("kind", kind(calibration)));
      } else {
        scale(channel, calibration.scale(channel), gain, zero);
      }
    }
  }

  private static String kind(Calibration calibration) {
    return calibration.kind().name().toLowerCase(Locale.ROOT);
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
      speech.out(Said.of("calibration.gain", number("%+.2f", change)));
      String unit = line.channel().quantity().unit();
      for (int k = 0; k < line.points().size(); k++) {
        speech.out(
            Said.of(
                "calibration.point",
                number("%10.5g", line.points().get(k).value()),
                unit,
                number("%8.2f", line.points().get(k).second().meanCounts()),
                number("%+.3g", line.residuals().get(k))));
      }
      for (UncertaintyBudget.Line part : line.budget().lines()) {
        speech.out(
            Said.of(
                "calibration.part",
                number("%-14s", speech.in(Said.of("calibration.cause." + part.cause()))),
                part.type(),
                number("%.4f", 100 * part.gainShare()),
                number("%.3f", part.zeroCounts())));
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
    String ms = number("%.1f", cut.afterMs());
    String next = cut.works() ? "cut.works" : cut.gone() ? "cut.slow" : "cut.flows";
    Worded then = Said.of(next);
    speech.out(
        Double.isFinite(cut.currentA())
            ? Said.of("cut.current", number("%.1f", cut.currentA()), ms, then)
            : Said.of("cut", ms, then));
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
    speech.out(
        Said.of(
            gainShare >= NEVER_CALIBRATED ? "calibration.scale.never" : "calibration.scale",
            number("%-2s", channel),
            number("%+.5g", scale.zero()),
            number("%+.5g", scale.full()),
            channel.quantity().unit(),
            number("%.2f", 200 * gainShare),
            number("%.2f", 2 * zeroCounts)));
  }

  private String number(String format, Object... values) {
    return speech.number(format, values);
  }
}
