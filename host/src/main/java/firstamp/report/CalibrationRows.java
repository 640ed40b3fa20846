package firstamp.report;

import firstamp.analysis.figures.FigureText;
import firstamp.analysis.statistics.Uncertainty;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ChannelScale;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;

/** What each input of the probe shows, and how sure that is. */
final class CalibrationRows {
  private static final ResourceBundle WORDS =
      ResourceBundle.getBundle("firstamp.report.report", Locale.ROOT);

  private CalibrationRows() {}

  static List<List<String>> of(Calibration calibration) {
    Uncertainty uncertainty = new Uncertainty(calibration);
    List<List<String>> rows = new ArrayList<>();
    for (Channel channel : Channel.values()) {
      ChannelScale scale = calibration.scale(channel);
      String unit = channel == Channel.I || channel == Channel.J ? "A" : "V";
      double zero = calibration.offsetUncertaintyCounts().get(channel) * Math.abs(scale.perCount());
      rows.add(
          List.of(
              WORDS.getString("channel." + channel.name()),
              FigureText.of(scale.value(0), unit) + " to " + FigureText.of(scale.value(1024), unit),
              String.format(
                  Locale.ROOT, "%.2g %%", 100 * Uncertainty.COVERAGE * uncertainty.gain(channel)),
              FigureText.of(Uncertainty.COVERAGE * zero, unit)));
    }
    return rows;
  }
}
