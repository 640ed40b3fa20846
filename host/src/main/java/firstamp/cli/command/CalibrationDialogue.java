package firstamp.cli.command;

import firstamp.analysis.calibrate.CalibrationRefused;
import firstamp.analysis.calibrate.CellDivider;
import firstamp.analysis.calibrate.SettledSecond;
import firstamp.cli.output.CliFailure;
import firstamp.cli.output.Prompt;
import firstamp.cli.output.Said;
import firstamp.cli.output.Speech;
import firstamp.emulate.CalibrationDemo;
import firstamp.model.samples.Channel;
import firstamp.pipeline.RunRefused;
import firstamp.run.calibration.CalibrationProcedure;
import firstamp.run.calibration.ResistorTrial;
import java.io.IOException;
import java.util.List;
import java.util.Map;

/** Asks for what a calibration needs, one step after the other, and measures it. */
final class CalibrationDialogue {
  private static final long READ_METER_NANOS = 4_000_000_000L;

  private final CalibrationProcedure course;
  private final CalibrationDemo demo;
  private final Prompt prompt;
  private final boolean yes;
  private final Speech speech;

  /**
   * For one calibration.
   *
   * @param demo the practice box, null = a real one
   * @param yes nothing is asked: everything is joined as the steps say
   */
  CalibrationDialogue(
      CalibrationProcedure course,
      CalibrationDemo demo,
      Prompt prompt,
      boolean yes,
      Speech speech) {
    this.course = course;
    this.demo = demo;
    this.prompt = prompt;
    this.yes = yes;
    this.speech = speech;
  }

  /** The steps that are asked for, then the further points. */
  void measure(List<String> steps, Map<Channel, Double> at)
      throws CliFailure, IOException, RunRefused, CalibrationRefused {
    if (steps.contains("zero")) {
      zero();
    }
    if (steps.contains("volts")) {
      volts();
    }
    if (steps.contains("current")) {
      current();
    }
    if (steps.contains("levels")) {
      levels();
    }
    for (Map.Entry<Channel, Double> point : at.entrySet()) {
      further(point.getKey(), point.getValue());
    }
  }

  /** The resistor on the set terminals: it must switch off. */
  ResistorTrial.Cut tryTheCut() throws CliFailure, IOException, RunRefused {
    ask("cut");
    if (demo != null) {
      demo.resistor(12);
    }
    return course.tryTheCut();
  }

  private void zero() throws CliFailure, IOException, RunRefused {
    ask("zero");
    if (demo != null) {
      demo.volts(0);
    }
    for (Channel channel : course.zero()) {
      speech.err(Said.of("calibrate.is-joined-to-nothing-it", channel));
    }
  }

  private void volts() throws CliFailure, IOException, RunRefused {
    ask("volts");
    if (demo != null) {
      demo.volts(CalibrationDemo.BATTERY_V);
    }
    double volts = number("volts", CalibrationDemo.BATTERY_V);
    for (Channel channel : course.volts(volts)) {
      speech.err(Said.of("calibrate.is-not-on-the-battery", channel));
    }
  }

  private void current() throws CliFailure, IOException, RunRefused {
    String[] words = {"current", "current.more"};
    for (int k = 0; k < words.length; k++) {
      ask(words[k]);
      double supplyV = CalibrationDemo.SUPPLY_V.get(k);
      if (demo != null) {
        demo.resistor(supplyV);
      }
      amps(k == 0 ? "low" : "high", supplyV / CalibrationDemo.RESISTOR_OHM, null);
    }
  }

  private void levels() throws CliFailure, IOException, RunRefused, CalibrationRefused {
    double[] ohm = {CalibrationDemo.DIVIDER_OHM.get(0), CalibrationDemo.DIVIDER_OHM.get(1)};
    ask("levels");
    CellDivider divider = CellDivider.of(number("large", ohm[0]), number("small", ohm[1]));
    ask("levels.cell");
    if (demo != null) {
      demo.levels();
    }
    course.levels(number("cell", CalibrationDemo.CELL_V), divider);
  }

  private void amps(String step, double demoA, Double given)
      throws CliFailure, IOException, RunRefused {
    SettledSecond second = course.current(demo == null ? READ_METER_NANOS : 0);
    course.current(step, second, given != null ? given : number("amps", demoA));
  }

  private void further(Channel channel, double value) throws CliFailure, IOException, RunRefused {
    ask("further", speech.number("%.5g", value), channel.quantity().unit(), channel);
    if (channel.quantity() == Channel.Quantity.AMPERE) {
      if (demo != null) {
        demo.resistor(value * CalibrationDemo.RESISTOR_OHM);
      }
      amps("further", value, value);
      return;
    }
    if (demo != null) {
      demo.volts(value);
    }
    course.further(channel, value);
  }

  private void ask(String step, Object... values) throws CliFailure {
    if (!yes) {
      prompt.enter(Said.of("calibrate.step." + step, values));
    }
  }

  private double number(String what, double demoValue) throws CliFailure {
    return demo != null && yes
        ? demoValue
        : prompt.number(Said.of("calibrate.ask." + what), demo == null ? null : demoValue);
  }
}
