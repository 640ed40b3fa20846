package firstamp.app;

import firstamp.analysis.calibrate.CalibrationLine;
import firstamp.analysis.calibrate.CalibrationRefused;
import firstamp.analysis.calibrate.CellDivider;
import firstamp.analysis.calibrate.MeterAccuracy;
import firstamp.analysis.calibrate.SettledSecond;
import firstamp.emulate.CalibrationDemo;
import firstamp.emulate.ProbeOptions;
import firstamp.emulate.line.Pace;
import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.model.ProbePort;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Channel;
import firstamp.pipeline.RunRefused;
import firstamp.run.calibration.CalibrationProcedure;
import firstamp.run.calibration.ResistorTrial;
import java.io.IOException;
import java.util.List;

/**
 * The guided steps with the probe box: calibration in four steps, and the trip test. Knows no
 * display. {@link #go} waits for the box: never on the Swing thread; the rest is quick. One thread
 * at a time.
 */
public final class ProbeFlow {
  private static final long READ_METER_NANOS = 4_000_000_000L;

  private final Desk desk;
  private final CalibrationProcedure course = new CalibrationProcedure();
  private ProbeStep step = ProbeStep.START;
  private String port;
  private CalibrationDemo demo;
  private MeterAccuracy voltsAccuracy = new MeterAccuracy(0.8, 0);
  private MeterAccuracy ampsAccuracy = new MeterAccuracy(1.5, 0);
  private MeterAccuracy ohmsAccuracy = new MeterAccuracy(1, 0);
  private double largeOhm;
  private CellDivider divider;
  private List<Channel> leftOut = List.of();
  private SettledSecond measured;
  private List<CalibrationLine> lines = List.of();
  private ResistorTrial.Cut cut;

  ProbeFlow(Desk desk) {
    this.desk = desk;
  }

  public ProbeStep step() {
    return step;
  }

  /** Whether the emulated box is used. */
  public boolean emulated() {
    return demo != null;
  }

  /** Channels that the last step could not take. */
  public List<Channel> leftOut() {
    return leftOut;
  }

  public List<CalibrationLine> lines() {
    return lines;
  }

  /** What the box kept before. */
  public Calibration before() {
    return course.before();
  }

  public ResistorTrial.Cut cut() {
    return cut;
  }

  /** What the meter would show on the emulated box; null on a real one: only eyes can read it. */
  public Double demoReading() {
    if (demo == null) {
      return null;
    }
    return switch (step) {
      case VOLTS -> CalibrationDemo.BATTERY_V;
      case LOW_READ -> CalibrationDemo.SUPPLY_V.get(0) / CalibrationDemo.RESISTOR_OHM;
      case HIGH_READ -> CalibrationDemo.SUPPLY_V.get(1) / CalibrationDemo.RESISTOR_OHM;
      case LARGE -> CalibrationDemo.DIVIDER_OHM.get(0);
      case SMALL -> CalibrationDemo.DIVIDER_OHM.get(1);
      case LEVELS -> CalibrationDemo.CELL_V;
      default -> null;
    };
  }

  /** The person's meter, from its data sheet. */
  public void accuracy(MeterAccuracy volts, MeterAccuracy amps, MeterAccuracy ohms) {
    voltsAccuracy = volts;
    ampsAccuracy = amps;
    ohmsAccuracy = ohms;
  }

  /**
   * Finds the box and begins.
   *
   * @param path of its port, null = the emulated box
   * @param first step to begin with
   */
  public void begin(String path, ProbeStep first) throws IOException, RunRefused {
    port = path;
    attach();
    if (path != null) {
      desk.keepPort(path);
    }
    step = first;
  }

  private void attach() throws IOException, RunRefused {
    demo = port == null ? new CalibrationDemo(ProbeOptions.of(1, Pace.MAX)) : null;
    ProbePort line = demo != null ? demo.port() : desk.ports().open(port);
    course.attach(line);
    course.requireOff();
  }

  /**
   * Does what the step is about and continues with the next.
   *
   * @param reading of the person's meter where the step asks for one
   */
  public void go(Double reading) throws IOException, RunRefused, CalibrationRefused, LogException {
    if (!course.attached()) {
      attach();
    }
    leftOut = List.of();
    switch (step) {
      case ZERO -> {
        join(() -> demo.volts(0));
        leftOut = course.zero();
        step = ProbeStep.VOLTS;
      }
      case VOLTS -> {
        join(() -> demo.volts(CalibrationDemo.BATTERY_V));
        leftOut = course.volts(reading);
        step = ProbeStep.LOW;
      }
      case LOW -> flow(0, ProbeStep.LOW_READ);
      case LOW_READ -> {
        course.current("low", measured, reading);
        step = ProbeStep.HIGH;
      }
      case HIGH -> flow(1, ProbeStep.HIGH_READ);
      case HIGH_READ -> {
        course.current("high", measured, reading);
        // What cannot be is refused here, before more is asked for.
        calculate();
        step = ProbeStep.LARGE;
      }
      case LARGE -> {
        largeOhm = reading;
        step = ProbeStep.SMALL;
      }
      case SMALL -> {
        divider = CellDivider.of(largeOhm, reading);
        step = ProbeStep.LEVELS;
      }
      case LEVELS -> {
        join(() -> demo.levels());
        course.levels(reading, divider);
        calculate();
        step = ProbeStep.RESULT;
      }
      case RESULT -> write();
      case WRITTEN, CUT -> tryTheCut();
      case START, CUT_DONE -> throw new IllegalStateException("nothing to do in " + step);
    }
  }

  /** Leaves the levels out: on to the result. */
  public void skip() {
    if (!step.canBeSkipped()) {
      throw new IllegalStateException("nothing to skip in " + step);
    }
    step = ProbeStep.RESULT;
  }

  private void calculate() throws CalibrationRefused {
    lines = course.lines(voltsAccuracy, ampsAccuracy, ohmsAccuracy);
  }

  private void join(Runnable onDemo) {
    if (demo != null) {
      onDemo.run();
    }
  }

  private void flow(int which, ProbeStep next) throws IOException, RunRefused {
    join(() -> demo.resistor(CalibrationDemo.SUPPLY_V.get(which)));
    measured = course.current(demo == null ? READ_METER_NANOS : 0);
    step = next;
  }

  private void write() throws IOException, RunRefused, LogException {
    long now = desk.time().epochMillis();
    Calibration kept = course.write(lines, now / 1000);
    try (BenchLog log =
        BenchLog.open(demo == null ? desk.log() : desk.emulatedLog(), desk.time())) {
      log.keep(kept);
    }
    if (demo == null) {
      desk.settings().withCalibrated(now).save(desk.folder());
    }
    step = ProbeStep.WRITTEN;
  }

  private void tryTheCut() throws IOException, RunRefused {
    if (step == ProbeStep.WRITTEN) {
      step = ProbeStep.CUT;
      return;
    }
    join(() -> demo.resistor(12));
    cut = course.tryTheCut();
    if (demo == null && cut.works()) {
      desk.settings().withCutTried(desk.time().epochMillis()).save(desk.folder());
    }
    step = ProbeStep.CUT_DONE;
  }

  /** Opens the switch now; from any thread. */
  public void off() {
    course.off();
  }

  /** One step back; false at the first step. */
  public boolean back() {
    switch (step) {
      case START -> {
        return false;
      }
      case ZERO, CUT, CUT_DONE, WRITTEN -> step = ProbeStep.START;
      default -> step = ProbeStep.values()[step.ordinal() - 1];
    }
    return true;
  }

  /** Starts again; points that were taken are forgotten with the flow. */
  boolean finished() {
    return step == ProbeStep.WRITTEN || step == ProbeStep.CUT_DONE || step == ProbeStep.START;
  }

  /** Closes the line, the switch open; what was measured stays. */
  void leave() {
    course.close();
  }
}
