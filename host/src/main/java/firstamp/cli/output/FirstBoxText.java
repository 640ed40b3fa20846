package firstamp.cli.output;

import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.analysis.calibrate.CalibrationLine;
import firstamp.analysis.calibrate.SettledSecond;
import firstamp.model.ProbeHello;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ChannelScale;
import firstamp.run.calibration.CalibrationCourse;
import firstamp.run.calibration.ResistorTrial;
import java.util.List;
import java.util.Locale;

/**
 * What was measured on a new box, beside what it keeps: of a new box what the circuit should give.
 */
public final class FirstBoxText {
  private static final String NONE_MEASURED = "No box has been built or measured.";

  private final boolean json;
  private final JsonLines lines = new JsonLines(System.out);

  public FirstBoxText(boolean json) {
    this.json = json;
  }

  /**
   * Prints it.
   *
   * @param practice whether it is an emulated box
   * @return exit code: a box that did not switch off in time is a finding
   */
  public int print(
      CalibrationCourse course,
      List<CalibrationLine> found,
      ResistorTrial.Cut cut,
      boolean practice) {
    ProbeHello hello = course.hello();
    if (json) {
      print(course, hello, practice);
    } else {
      say(
          "Probe box, firmware %d.%d, start %d, self-test %d, limiting is seen above %.3g A, look %.4g ohm.",
          hello.firmwareMajor(),
          hello.firmwareMinor(),
          hello.bootId(),
          hello.selfTestBits(),
          hello.hardShortA(),
          hello.lookOhm());
      say(
          practice
              ? "A practice box, drawn from its parts. " + NONE_MEASURED
              : NONE_MEASURED + " Keep this beside the windows of the assembly page.");
    }
    for (CalibrationLine line : found) {
      channel(course, line);
    }
    new CalibrationText(json).cut(cut);
    return cut.works() ? ExitCode.NORMAL : ExitCode.FINDING;
  }

  private void print(CalibrationCourse course, ProbeHello hello, boolean practice) {
    ObjectNode node = JsonLines.object("firstBox");
    node.put("practice", practice);
    node.put("firmware", hello.firmwareMajor() + "." + hello.firmwareMinor());
    node.put("selfTestBits", hello.selfTestBits());
    node.put("calibration", course.before().kind().name().toLowerCase(Locale.ROOT));
    node.put("limitingSeenA", hello.hardShortA());
    node.put("lookOhm", hello.lookOhm());
    lines.print(node);
  }

  private void channel(CalibrationCourse course, CalibrationLine line) {
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
    say(
        "%-2s  zero %8.2f counts (box keeps %.0f), noise %.2f counts, %s",
        channel,
        zero.meanCounts(),
        kept.counts(0),
        zero.deviationCounts(),
        gain == null
            ? "gain not measured"
            : String.format(
                Locale.ROOT,
                "gain %+.2f %% from what it keeps, +-%.2f %%",
                gain,
                200 * line.budget().gainShare()));
  }

  private static void say(String format, Object... values) {
    System.out.printf(Locale.ROOT, format + "%n", values);
  }
}
