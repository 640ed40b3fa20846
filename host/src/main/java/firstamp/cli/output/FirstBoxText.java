package firstamp.cli.output;

import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.analysis.calibrate.CalibrationLine;
import firstamp.analysis.calibrate.SettledSecond;
import firstamp.model.ProbeHello;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ChannelScale;
import firstamp.model.text.Worded;
import firstamp.run.calibration.CalibrationProcedure;
import firstamp.run.calibration.ResistorTrial;
import java.util.List;
import java.util.Locale;

/**
 * What was measured on a new box, beside what it keeps: of a new box what the circuit should give.
 */
public final class FirstBoxText {
  private final boolean json;
  private final Speech speech;
  private final JsonLines lines = new JsonLines(System.out);

  public FirstBoxText(boolean json, Speech speech) {
    this.speech = speech;
    this.json = json;
  }

  /**
   * Prints it.
   *
   * @param practice whether it is an emulated box
   * @return exit code: a box that did not switch off in time is a finding
   */
  public int print(
      CalibrationProcedure course,
      List<CalibrationLine> found,
      ResistorTrial.Cut cut,
      boolean practice) {
    ProbeHello hello = course.hello();
    if (json) {
      print(course, hello, practice);
    } else {
      speech.out(
          Said.of(
              "first-box",
              hello.firmwareMajor() + "." + hello.firmwareMinor(),
              hello.bootId(),
              hello.selfTestBits(),
              speech.number("%.3g", hello.hardShortA()),
              speech.number("%.4g", hello.lookOhm())));
      speech.out(Said.of(practice ? "first-box.practice" : "first-box.keep"));
    }
    for (CalibrationLine line : found) {
      channel(course, line);
    }
    new CalibrationText(json, speech).cut(cut);
    return cut.works() ? ExitCode.NORMAL : ExitCode.FINDING;
  }

  private void print(CalibrationProcedure course, ProbeHello hello, boolean practice) {
    ObjectNode node = JsonLines.object("firstBox");
    node.put("practice", practice);
    node.put("firmware", hello.firmwareMajor() + "." + hello.firmwareMinor());
    node.put("selfTestBits", hello.selfTestBits());
    node.put("calibration", course.before().kind().name().toLowerCase(Locale.ROOT));
    node.put("limitingSeenA", hello.hardShortA());
    node.put("lookOhm", hello.lookOhm());
    lines.print(node);
  }

  private void channel(CalibrationProcedure course, CalibrationLine line) {
    Channel channel = line.channel();
    ChannelScale kept = course.before().scale(channel);
    Double gain =
        line.points().size() < 2
            ? null
            : (Double) (100 * (line.scale().perCount() / kept.perCount() - 1));
    SettledSecond.Mean zero = course.zeroOf(channel);
    if (json) {
      ObjectNode node = JsonLines.object("firstBoxChannel");
      node.put("channel", channel.name());
      node.put("zeroCounts", zero.meanCounts());
      node.put("keptZeroCounts", kept.counts(0));
      node.put("noiseCounts", zero.deviationCounts());
      node.put("gainPercentFromKept", gain);
      node.put("gainPercentPlusMinus", 200 * line.budget().gainShare());
      lines.print(node);
      return;
    }
    Worded measured =
        gain == null
            ? Said.of("first-box.no-gain")
            : Said.of(
                "first-box.gain",
                speech.number("%+.2f", gain),
                speech.number("%.2f", 200 * line.budget().gainShare()));
    speech.out(
        Said.of(
            "first-box.channel",
            speech.number("%-2s", channel),
            speech.number("%8.2f", zero.meanCounts()),
            speech.number("%.0f", kept.counts(0)),
            speech.number("%.2f", zero.deviationCounts()),
            measured));
  }
}
