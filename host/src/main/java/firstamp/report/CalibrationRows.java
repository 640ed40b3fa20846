package firstamp.report;

import firstamp.analysis.statistics.Uncertainty;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ChannelScale;
import java.util.ArrayList;
import java.util.List;

/** What each input of the probe shows, and how sure that is. */
final class CalibrationRows {
  private CalibrationRows() {}

  static List<List<String>> of(Calibration calibration, ReportWords words) {
    Uncertainty uncertainty = new Uncertainty(calibration);
    List<List<String>> rows = new ArrayList<>();
    for (Channel channel : Channel.values()) {
      ChannelScale scale = calibration.scale(channel);
      String unit = channel == Channel.I || channel == Channel.J ? "A" : "V";
      double zero = calibration.offsetUncertaintyCounts().get(channel) * Math.abs(scale.perCount());
      rows.add(
          List.of(
              words.word("channel." + channel.name()),
              words.word(
                  "range.from-to",
                  words.figures().value(scale.value(0), unit),
                  words.figures().value(scale.value(1024), unit)),
              words.number("%.2g %%", 100 * Uncertainty.COVERAGE * uncertainty.gain(channel)),
              words.figures().value(Uncertainty.COVERAGE * zero, unit)));
    }
    return rows;
  }
}
