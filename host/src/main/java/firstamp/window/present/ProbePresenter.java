package firstamp.window.present;

import firstamp.analysis.calibrate.CalibrationLine;
import firstamp.app.ProbeFlow;
import firstamp.app.ProbeStep;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.run.calibration.ResistorTrial;
import firstamp.window.widgets.Tone;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Words of the guided steps with the probe box. Without state. */
public final class ProbePresenter {
  private final Words words;
  private final Numbers numbers;

  public ProbePresenter(Words words, Numbers numbers) {
    this.words = words;
    this.numbers = numbers;
  }

  private static String id(ProbeStep step) {
    return step.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  public String title(ProbeStep step) {
    return words.get("probe." + id(step));
  }

  /** What to join, and what happens then. */
  public String todo(ProbeFlow flow) {
    return switch (flow.step()) {
      case RESULT -> String.join("\n", result(flow.before(), flow.lines()));
      case CUT_DONE -> cut(flow.cut());
      default -> words.get("probe." + id(flow.step()) + ".todo");
    };
  }

  /** Words on what goes on. */
  public String go(ProbeStep step) {
    return words.get("probe." + id(step) + ".go");
  }

  /** What the last step could not take; empty = nothing. */
  public String leftOut(List<Channel> channels) {
    List<String> names = new ArrayList<>();
    channels.forEach(channel -> names.add(words.get("channel." + channel.name())));
    return names.isEmpty() ? "" : words.get("probe.leftOut", String.join(", ", names));
  }

  /** One line per channel: how far it was off, how good it is now. */
  public List<String> result(Calibration before, List<CalibrationLine> lines) {
    List<String> text = new ArrayList<>();
    for (CalibrationLine line : lines) {
      String name = words.get("channel." + line.channel().name());
      if (line.points().size() < 2) {
        text.add(words.get("probe.lineZero", name));
        continue;
      }
      double change = 100 * (line.scale().perCount() / before.scale(line.channel()).perCount() - 1);
      text.add(
          words.get(
              "probe.line",
              name,
              (change >= 0 ? "+" : "") + numbers.fixed(change, 2),
              numbers.fixed(200 * line.budget().gainShare(), 2)));
    }
    return text;
  }

  /** "It switched 1.2 A off in 0.7 ms. Not tried: the 10 A path." */
  public String cut(ResistorTrial.Cut cut) {
    String seen =
        Double.isFinite(cut.currentA())
            ? words.get(
                "probe.cut.seen", numbers.fixed(cut.currentA(), 1), numbers.fixed(cut.afterMs(), 1))
            : words.get("probe.cut.seenNoCurrent", numbers.fixed(cut.afterMs(), 1));
    String judged =
        cut.works() ? "probe.cut.notTried" : cut.gone() ? "probe.cut.slow" : "probe.cut.flows";
    return seen + " " + words.get(judged);
  }

  public Tone tone(ProbeFlow flow) {
    return switch (flow.step()) {
      case CUT_DONE -> flow.cut().works() ? Tone.PLAIN : Tone.ALARM;
      case WRITTEN -> Tone.CALM;
      default -> Tone.PLAIN;
    };
  }
}
