package firstamp.analysis;

import firstamp.model.Calibration;
import firstamp.model.Channel;
import firstamp.model.ChannelScale;
import firstamp.model.ConversionBlock;
import firstamp.model.JobSheet;
import firstamp.model.LevelWindow;
import firstamp.model.Look;
import firstamp.model.ProbeEvent;
import firstamp.model.Reading;
import firstamp.model.RippleWindow;
import firstamp.model.SamplePlan;
import firstamp.model.Scaling;
import firstamp.model.Summary;
import firstamp.model.SwitchState;
import firstamp.model.Zero;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Collects one power-up and gives the figures of its summary, at any time and at its end.
 *
 * <p>Fed with events, readings, conversions, level and ripple windows in the order in which they
 * came. Values count from the closing of the switch; a second closing starts the figures again.
 * Constant memory however long it runs. What could not be measured is null. Not thread-safe.
 */
public final class PowerUpFigures {
  private static final long HELD_MICROS = 2_000_000;
  private static final long SECOND_MICROS = 1_000_000;
  private static final long READING_MICROS = 10_000;
  private static final int LEAST_READINGS = 80;
  private static final long NOT_YET = Long.MIN_VALUE;

  private final JobSheet sheet;
  private final Calibration calibration;
  private final double lookOhm;
  private final Uncertainty uncertainty;
  private final DelayLine<Reading> heldReadings = new DelayLine<>(HELD_MICROS);
  private final DelayLine<LevelWindow> heldLevels = new DelayLine<>(HELD_MICROS);
  private final List<DelayLine<RippleWindow>> heldRipple = new ArrayList<>();
  private final RailStart[] railStarts = new RailStart[4];
  private final LevelSums before;
  private Look look;
  private Scaling scaling;
  private Collected collected;
  private long closedMicros = NOT_YET;
  private long closedIndex;
  private long openedMicros = NOT_YET;
  private long latestMicros = NOT_YET;

  /**
   * Nothing collected.
   *
   * @param effective sheet with defaults filled in
   * @param calibration of the probe
   * @param lookOhm look resistor as the probe told it
   */
  public PowerUpFigures(JobSheet effective, Calibration calibration, double lookOhm) {
    this.sheet = Objects.requireNonNull(effective, "effective");
    this.calibration = Objects.requireNonNull(calibration, "calibration");
    this.lookOhm = lookOhm;
    this.uncertainty = new Uncertainty(calibration);
    this.scaling = new Scaling(calibration, Zero.NONE);
    this.collected = new Collected(meterSignalV());
    this.before = new LevelSums(meterSignalV());
    for (int rail = 0; rail <= 3; rail++) {
      heldRipple.add(new DelayLine<>(HELD_MICROS));
      railStarts[rail] = new RailStart();
    }
  }

  /** Takes an event; the look, closing and opening matter here. */
  public void onEvent(ProbeEvent event) {
    if (event instanceof ProbeEvent.Looked looked) {
      look = looked.look();
      scaling = new Scaling(calibration, look.zero());
    } else if (event instanceof ProbeEvent.SwitchChanged changed) {
      if (changed.state() == SwitchState.ON) {
        closedAt(changed.micros());
      } else {
        openedAt(changed.micros());
      }
    } else if (event instanceof ProbeEvent.Tripped tripped) {
      openedAt(tripped.trip().openedMicros());
    }
  }

  /** The switch closed, or without one the set was first seen powered. */
  public void closedAt(long micros) {
    closedMicros = micros;
    closedIndex = SamplePlan.indexAt(micros);
    openedMicros = NOT_YET;
    collected = new Collected(meterSignalV());
    for (RailStart start : railStarts) {
      start.clear();
    }
  }

  /** The switch opened; the first of several reports after a closing counts. */
  public void openedAt(long micros) {
    if (closedMicros != NOT_YET && openedMicros == NOT_YET && micros >= closedMicros) {
      openedMicros = micros;
    }
  }

  /** Takes a reading. */
  public void onReading(Reading reading) {
    if (afterOpening(reading.startMicros())) {
      return;
    }
    latestMicros = reading.endMicros();
    heldReadings.put(reading.startMicros(), reading.endMicros(), reading, this::commit);
  }

  /** Takes conversions: the first second of the rails is kept at 1 kHz. */
  public void accept(ConversionBlock block) {
    if (closedMicros == NOT_YET) {
      return;
    }
    long begin = block.firstIndex() - closedIndex;
    if (begin >= RailStart.CONVERSIONS * 16L || begin + block.counts().length <= 0) {
      return;
    }
    short[] counts = block.counts();
    for (int k = 0; k < counts.length; k++) {
      long at = begin + k;
      int slot = (int) (at & 15);
      if (at >= 0 && at < RailStart.CONVERSIONS * 16L && slot % 4 == 3 && slot > 3) {
        railStarts[slot / 4].conversion((int) (at >> 4), counts[k]);
      }
    }
  }

  /** Takes a window of levels. */
  public void onLevels(LevelWindow window) {
    if (afterOpening(SamplePlan.microsOf(window.firstIndex()))) {
      return;
    }
    if (closedMicros == NOT_YET) {
      before.add(window);
    }
    heldLevels.put(
        SamplePlan.microsOf(window.firstIndex()),
        SamplePlan.microsOf(window.endIndex()),
        window,
        this::commit);
  }

  /** Takes a window of ripple. */
  public void onRipple(RippleWindow window) {
    if (afterOpening(SamplePlan.microsOf(window.firstIndex()))) {
      return;
    }
    heldRipple
        .get(window.rail())
        .put(
            SamplePlan.microsOf(window.firstIndex()),
            SamplePlan.microsOf(window.endIndex()),
            window,
            this::commit);
  }

  /** Look; null if none was made. */
  public Summary.LookFigures look() {
    return look == null ? null : LookReckoning.of(look, calibration, lookOhm);
  }

  /** How long the switch was closed, milliseconds; null if it never was. */
  public Double onMs() {
    return closedMicros == NOT_YET ? null : (Double) ((endMicros() - closedMicros) / 1000.0);
  }

  /** Supply. */
  public Summary.SupplyFigures supply() {
    if (closedMicros == NOT_YET) {
      return new Summary.SupplyFigures(null, null, null, null, null, null, null);
    }
    SupplyStart start = collected.supply.copy();
    for (Reading reading : heldReadings.within(closedMicros, startsBefore())) {
      start.add(number(reading), reading, scaling);
    }
    int begun = (int) ((startsBefore() - closedMicros) / READING_MICROS);
    List<Reading> last = lastSecond();
    Moments amps = last == null ? null : moments(last, scaling::supplyA);
    Moments volts = last == null ? null : moments(last, scaling::supplyV);
    boolean fine = last != null && scaling.fine(last.get(last.size() - 1));
    return new Summary.SupplyFigures(
        start.peakA(begun),
        start.i2tA2s(begun),
        start.chargeC(begun),
        amps == null ? null : (Double) amps.mean(),
        amps == null ? null : expanded(fine ? Channel.J : Channel.I, amps),
        volts == null ? null : (Double) volts.mean(),
        volts == null ? null : expanded(Channel.V, volts));
  }

  /** One entry per rail of the sheet, in its order. */
  public List<Summary.RailFigures> rails() {
    List<Summary.RailFigures> figures = new ArrayList<>();
    for (JobSheet.Rail rail : sheet.rails()) {
      figures.add(rail(rail));
    }
    return figures;
  }

  /** Everything at once, for comparing and judging. */
  public Evidence evidence() {
    List<Evidence.RailRipple> ripples = new ArrayList<>();
    for (JobSheet.Rail rail : sheet.rails()) {
      RippleSums.Ripple ripple = ripple(rail);
      if (ripple != null) {
        ripples.add(
            new Evidence.RailRipple(
                rail.input(),
                ripple.mainsHz(),
                ripple.rms1V(),
                ripple.rms2V(),
                ripple.toneVrms(),
                ripple.strongestHz()));
      }
    }
    return new Evidence(
        look(), supply(), rails(), levels(), onMs(), course(), ripples, extras(), calibration);
  }

  /** How it went; null if the switch never closed. */
  public PowerUpCourse course() {
    if (closedMicros == NOT_YET) {
      return null;
    }
    CourseSums sums = collected.course.copy();
    for (Reading reading : heldReadings.within(closedMicros, endMicros())) {
      sums.add(number(reading), reading, scaling);
    }
    return sums.course();
  }

  private Evidence.Extras extras() {
    SupplyStart start = collected.supply.copy();
    LevelSums sums = levelSums();
    if (closedMicros != NOT_YET) {
      for (Reading reading : heldReadings.within(closedMicros, startsBefore())) {
        start.add(number(reading), reading, scaling);
      }
    }
    Double headV = sums.headV();
    boolean atFloor =
        headV != null
            && headV
                <= LevelReckoning.TELLS_FROM_NOISE
                    * LevelReckoning.floorV(sums.headFloorV(), sums.tonal());
    return new Evidence.Extras(
        start.clipped(),
        sums.speechDb(),
        sums.speechDbPlusMinus(),
        sums.speechWindows(),
        atFloor,
        sums.humHz(),
        sums.humEvenShare(),
        humBeforeDbv());
  }

  private Double humBeforeDbv() {
    Double humV = before.humV();
    boolean seen = humV != null && humV > LevelReckoning.humFloorV(before.headFloorV());
    return seen ? (Double) Decibels.dbv(humV) : null;
  }

  private LevelSums levelSums() {
    LevelSums sums = collected.levels.copy();
    if (closedMicros != NOT_YET) {
      for (LevelWindow window : heldLevels.within(levelsFrom(), openingMicros())) {
        sums.add(window);
      }
    }
    return sums;
  }

  /** Head and meter; null if the sheet names no levels or no window came while on. */
  public Summary.LevelFigures levels() {
    JobSheet.Levels levels = sheet.levels();
    if (levels == null || closedMicros == NOT_YET) {
      return null;
    }
    LevelSums sums = levelSums();
    if (sums.headFloorV() == null) {
      return null;
    }
    double floorV = LevelReckoning.floorV(sums.headFloorV(), sums.tonal());
    Double headV = sums.headV() == null ? null : (Double) Math.max(sums.headV(), floorV);
    Double meterV = sums.meterV();
    Double headDbv = headV == null ? null : (Double) Decibels.dbv(headV);
    Double meterDbv = meterV == null ? null : (Double) Decibels.dbv(meterV);
    Double humV = sums.humV();
    boolean humSeen = humV != null && humV > LevelReckoning.humFloorV(sums.headFloorV());
    return new Summary.LevelFigures(
        sums.tonal() ? levels.toneHz() : null,
        headDbv,
        headV == null || levels.headOhm() == null
            ? null
            : (Double) (headV / levels.headOhm() * 1e6),
        meterDbv,
        headDbv == null ? null : (Double) (meterDbv - headDbv),
        levels.expectedDb(),
        humSeen ? (Double) Decibels.dbv(humV) : null);
  }

  private Summary.RailFigures rail(JobSheet.Rail rail) {
    int input = rail.input();
    Channel channel = Channel.ofRail(input);
    RippleSums.Ripple ripple = ripple(rail);
    Double rippleVrms = ripple == null ? null : (Double) ripple.rmsV();
    Double rippleHz = ripple == null ? null : (Double) ripple.strongestHz();
    List<Reading> last = closedMicros == NOT_YET ? null : lastSecond();
    if (last == null || last.stream().anyMatch(reading -> reading.clipped(channel))) {
      return new Summary.RailFigures(
          input, rail.name(), null, null, null, null, null, null, null, rippleVrms, rippleHz);
    }
    Moments volts = moments(last, reading -> scaling.railV(reading, input));
    SettleTimes times = collected.settle[input].copy();
    for (Reading reading : heldReadings.within(closedMicros, endMicros())) {
      times.add(reading.sum(channel), number(reading) + 1);
    }
    ChannelScale scale = calibration.scale(channel);
    return new Summary.RailFigures(
        input,
        rail.name(),
        volts.mean(),
        expanded(channel, volts),
        settledMs(times, scale, volts.mean(), 0.02),
        settledMs(times, scale, volts.mean(), 0.01),
        settledMs(times, scale, volts.mean(), 0.05),
        settledMs(times, scale, volts.mean(), 0.10),
        tauMs(input, scale, volts.mean()),
        rippleVrms,
        rippleHz);
  }

  private Double tauMs(int input, ChannelScale scale, double finalV) {
    RailStart start = railStarts[input];
    for (Reading reading : heldReadings.within(closedMicros, endMicros())) {
      keepStart(reading);
    }
    int readings =
        (int) Math.min(RailStart.READINGS, (endMicros() - closedMicros) / READING_MICROS);
    double offsetSeconds = (3 + 4 * input) * 62.5e-6;
    FirstOrderFit fit = start.fit(scale, finalV, readings, offsetSeconds);
    return fit == null ? null : (Double) (fit.tau() * 1000);
  }

  private static Double settledMs(
      SettleTimes times, ChannelScale scale, double finalV, double share) {
    double one = 10 * scale.counts(finalV - share * Math.abs(finalV));
    double other = 10 * scale.counts(finalV + share * Math.abs(finalV));
    return 10.0 * times.lastOutside(Math.min(one, other), Math.max(one, other));
  }

  private RippleSums.Ripple ripple(JobSheet.Rail rail) {
    if (closedMicros == NOT_YET) {
      return null;
    }
    RippleSums sums = collected.ripple[rail.input()].copy();
    for (RippleWindow window :
        heldRipple.get(rail.input()).within(rippleFrom(rail), openingMicros())) {
      sums.add(window);
    }
    return sums.mean();
  }

  private void commit(Reading reading) {
    if (closedMicros == NOT_YET || reading.startMicros() < closedMicros) {
      return;
    }
    if (reading.startMicros() < endMicros()) {
      collected.supply.add(number(reading), reading, scaling);
    }
    if (reading.endMicros() <= endMicros()) {
      collected.course.add(number(reading), reading, scaling);
      keepStart(reading);
      for (JobSheet.Rail rail : sheet.rails()) {
        int sum = reading.sum(Channel.ofRail(rail.input()));
        collected.settle[rail.input()].add(sum, number(reading) + 1);
      }
    }
  }

  private void keepStart(Reading reading) {
    int number = number(reading);
    if (number < RailStart.READINGS) {
      for (int rail = 1; rail <= 3; rail++) {
        railStarts[rail].reading(number, reading.sum(Channel.ofRail(rail)));
      }
    }
  }

  private void commit(LevelWindow window) {
    if (closedMicros != NOT_YET
        && SamplePlan.microsOf(window.firstIndex()) >= levelsFrom()
        && SamplePlan.microsOf(window.endIndex()) <= openingMicros()) {
      collected.levels.add(window);
    }
  }

  private void commit(RippleWindow window) {
    JobSheet.Rail rail = sheet.rail(window.rail());
    if (closedMicros != NOT_YET
        && rail != null
        && SamplePlan.microsOf(window.firstIndex()) >= rippleFrom(rail)
        && SamplePlan.microsOf(window.endIndex()) <= openingMicros()) {
      collected.ripple[window.rail()].add(window);
    }
  }

  /** Readings of the last second on; null if it was on for less, or a fifth of them is missing. */
  private List<Reading> lastSecond() {
    long end = endMicros();
    if (end - closedMicros < SECOND_MICROS) {
      return null;
    }
    List<Reading> last = heldReadings.within(Math.max(closedMicros, end - SECOND_MICROS), end);
    return last.size() < LEAST_READINGS ? null : last;
  }

  /** What began after the opening would only push out what is still held from before it. */
  private boolean afterOpening(long beginMicros) {
    return openedMicros != NOT_YET && beginMicros >= openedMicros;
  }

  private int number(Reading reading) {
    return (int) ((reading.startMicros() - closedMicros) / READING_MICROS);
  }

  private long endMicros() {
    return openedMicros != NOT_YET ? openedMicros : Math.max(closedMicros, latestMicros);
  }

  /** Windows may come before or after the readings of their time: only the opening bounds them. */
  private long openingMicros() {
    return openedMicros != NOT_YET ? openedMicros : Long.MAX_VALUE;
  }

  /** End of the reading in which the switch opened: the current after it adds nothing. */
  private long startsBefore() {
    long onMicros = endMicros() - closedMicros + READING_MICROS - 1;
    return closedMicros + onMicros - onMicros % READING_MICROS;
  }

  private long levelsFrom() {
    Double fromMs = sheet.levels() == null ? null : sheet.levels().fromMs();
    return closedMicros + Math.round((fromMs == null ? 1500 : fromMs) * 1000);
  }

  private long rippleFrom(JobSheet.Rail rail) {
    return closedMicros + Math.round((rail.settleMs() == null ? 500 : rail.settleMs()) * 1000);
  }

  private double meterSignalV() {
    Double dbv = sheet.levels() == null ? null : sheet.levels().meterSignalDbv();
    return dbv != null
        ? Decibels.voltsOfDbv(dbv)
        : LevelReckoning.defaultSignalV(calibration.scale(Channel.M));
  }

  private Double expanded(Channel channel, Moments moments) {
    return uncertainty.expanded(channel, moments.mean(), moments.meanUncertainty());
  }

  private interface Figure {
    double of(Reading reading);
  }

  private static Moments moments(List<Reading> readings, Figure figure) {
    double[] values = new double[readings.size()];
    for (int k = 0; k < values.length; k++) {
      values[k] = figure.of(readings.get(k));
    }
    return Moments.of(values);
  }

  /** What one closing has brought so far. */
  private static final class Collected {
    private final SupplyStart supply = new SupplyStart();
    private final CourseSums course = new CourseSums();
    private final SettleTimes[] settle = new SettleTimes[4];
    private final RippleSums[] ripple = new RippleSums[4];
    private final LevelSums levels;

    Collected(double signalV) {
      levels = new LevelSums(signalV);
      for (int rail = 1; rail <= 3; rail++) {
        settle[rail] = new SettleTimes();
        ripple[rail] = new RippleSums();
      }
    }
  }
}
