package firstamp.analysis.figures;

import firstamp.analysis.spectrum.LevelDetail;
import firstamp.analysis.spectrum.LevelPair;
import firstamp.analysis.spectrum.RailLines;
import firstamp.analysis.statistics.FirstOrderFit;
import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.model.LevelClips;
import firstamp.model.Look;
import firstamp.model.ProbeEvent;
import firstamp.model.Summary;
import firstamp.model.SwitchState;
import firstamp.model.Trip;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Capture;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.LevelWindow;
import firstamp.model.samples.Reading;
import firstamp.model.samples.RippleWindow;
import firstamp.model.samples.Scaling;
import firstamp.model.samples.Zero;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Collects one power-up and gives its figures, at any time and at its end.
 *
 * <p>Fed with events, readings, conversions, level and ripple windows in the order in which they
 * came. Values count from the closing of the switch; a second closing starts the figures again.
 * Constant memory however long it runs. What could not be measured is null. Not thread-safe.
 */
public final class PowerUpFigures {
  private final JobSheet sheet;
  private final Calibration calibration;
  private final double lookOhm;
  private final double hardShortA;
  private final RailCalculation railCalculation;
  private final OnInterval time = new OnInterval();
  private final HeldWindows held;
  private final RailStarts railStarts = new RailStarts();
  private Look look;
  private Trip trip;
  private Capture capture;
  private Scaling scaling;
  private ClosingSums sums;
  private LevelDetail detail;
  private LevelClips clips = LevelClips.JOINED;
  private LevelClips clipsAfter = LevelClips.JOINED;

  /**
   * Nothing collected.
   *
   * @param effective sheet with defaults filled in
   * @param calibration of the probe
   * @param lookOhm look resistor as the probe told it
   * @param hardShortA level of its comparator
   */
  public PowerUpFigures(
      JobSheet effective, Calibration calibration, double lookOhm, double hardShortA) {
    this.sheet = Objects.requireNonNull(effective, "effective");
    this.calibration = Objects.requireNonNull(calibration, "calibration");
    this.lookOhm = lookOhm;
    this.hardShortA = hardShortA;
    this.railCalculation = new RailCalculation(effective, calibration);
    this.scaling = new Scaling(calibration, Zero.NONE);
    this.held = new HeldWindows(effective, time, railStarts, levelSums(), levelSums());
    held.scaling(scaling);
    this.sums = empty();
  }

  private LevelSums levelSums() {
    LevelSums levels = LevelCalculation.sums(sheet, calibration.scale(Channel.M));
    if (!clips.head()) {
      levels.withoutHead();
    }
    return levels;
  }

  private void clipsRead(LevelClips found) {
    clipsAfter = found;
    if (!time.isClosed()) {
      clips = found;
    }
  }

  private ClosingSums empty() {
    Double toneHz = sheet.levels() == null ? null : sheet.levels().toneHz();
    return new ClosingSums(
        new IntervalTotals(levelSums(), toneHz),
        new Stretches(() -> new SteadySums(0, levelSums(), toneHz)));
  }

  /** Takes an event; the look, closing, opening and what happened matter here. */
  public void onEvent(ProbeEvent event) {
    if (event instanceof ProbeEvent.Looked looked) {
      look = looked.look();
      scaling = new Scaling(calibration, look.zero());
      held.scaling(scaling);
    } else if (event instanceof ProbeEvent.SwitchChanged changed) {
      if (changed.state() == SwitchState.ON) {
        closedAt(changed.micros());
      } else {
        openedAt(changed.micros());
      }
    } else if (event instanceof ProbeEvent.Tripped tripped) {
      trip = tripped.trip();
      openedAt(tripped.trip().openedMicros());
    } else if (event instanceof ProbeEvent.Captured captured) {
      capture = captured.capture();
    } else if (event instanceof ProbeEvent.Happened happened
        && happened.what() instanceof Happening.ClipsRead read) {
      clipsRead(read.clips());
    } else if (event instanceof ProbeEvent.Happened happened && !time.isAfter(event.micros())) {
      sums.stretches().begin(happened.micros(), happened.what());
    }
  }

  /** The switch closed, or without one the set was first seen powered. */
  public void closedAt(long micros) {
    time.closed(micros);
    if (trip != null && trip.openedMicros() <= micros) {
      trip = null;
      capture = null;
    }
    sums = empty();
    sums.stretches().closed(micros);
    railStarts.closed(micros);
  }

  /** The switch opened; the first of several reports after a closing counts. */
  public void openedAt(long micros) {
    time.opened(micros);
  }

  /** Takes conversions: the first second of the rails is kept at 1 kHz. */
  public void accept(ConversionBlock block) {
    if (time.isClosed()) {
      railStarts.accept(block);
    }
  }

  /** Takes a reading. */
  public void onReading(Reading reading) {
    if (!time.isAfter(reading.startMicros())) {
      time.latest(reading.endMicros());
      held.add(reading, sums);
    }
  }

  /** Takes the details of a window of levels, before the window itself. */
  public void onDetail(LevelDetail told) {
    detail = told;
  }

  /** Takes a window of levels. */
  public void onLevels(LevelWindow window) {
    LevelDetail of = detail != null && detail.firstIndex == window.firstIndex() ? detail : null;
    // Without the meter nobody knows when there is signal.
    if (clips.meter()) {
      held.add(new LevelPair(window, of), sums);
    }
  }

  /** Takes the lines of a rail, after the levels of the same window. */
  public void onRailLines(RailLines lines) {
    held.add(lines, sums);
  }

  /** Takes a window of ripple, after its lines; one in which the rail was clipped says nothing. */
  public void onRipple(RippleWindow window) {
    held.add(window, sums);
  }

  private ClosingSums now() {
    return held.allInto(sums.copy());
  }

  /** Look; null if none was made. */
  public Summary.LookFigures look() {
    return look == null ? null : LookCalculation.of(look, calibration, lookOhm);
  }

  /** How long the switch was closed, milliseconds; null if it never was. */
  public Double onMs() {
    return time.isClosed() ? (Double) time.ms(time.endMicros()) : null;
  }

  /** Supply. */
  public Summary.SupplyFigures supply() {
    return supply(now());
  }

  /** One entry per rail of the sheet, in its order. */
  public List<Summary.RailFigures> rails() {
    ClosingSums now = now();
    return rails(now, fits());
  }

  /** Head and meter; null if the sheet names no levels or no window came while on. */
  public Summary.LevelFigures levels() {
    return levels(now());
  }

  /** How it went; null if the switch never closed. */
  public PowerUpTrend course() {
    return time.isClosed() ? now().all().steady().course() : null;
  }

  /** Everything at once, for comparing and judging. */
  public Evidence evidence() {
    ClosingSums now = now();
    SteadySums steady = now.all().steady();
    FirstOrderFit[] fits = fits();
    PowerUpTrend course = time.isClosed() ? steady.course() : null;
    Summary.SupplyFigures supply = supply(now);
    List<Summary.RailFigures> rails = rails(now, fits);
    List<Evidence.RailRipple> ripples =
        time.isClosed() ? SteadyEvidence.ripples(steady, sheet) : List.of();
    return new Evidence(
        look(),
        supply,
        rails,
        levels(now),
        onMs(),
        course,
        ripples,
        railCalculation.more(rails, course, ripples, supply.steadyA(), fits),
        SteadyEvidence.heard(steady, sheet, held.before()),
        now.all().supply().firstSecond(),
        now.all().supply().clipped(),
        trip,
        trip == null ? null : TripPeak.of(trip, capture, scaling, hardShortA),
        now.stretches().evidence(sheet, scaling, time, held.before()),
        calibration,
        new Evidence.Clips(clips, clipsAfter));
  }

  private Summary.SupplyFigures supply(ClosingSums now) {
    if (!time.isClosed() || time.isShorterThanAConversionOfI()) {
      return new Summary.SupplyFigures(null, null, null, null, null, null, null);
    }
    return LastSecond.supply(now.all().supply(), time.begunReadings(), lastSecond());
  }

  private List<Summary.RailFigures> rails(ClosingSums now, FirstOrderFit[] fits) {
    LastSecond last = lastSecond();
    List<Summary.RailFigures> figures = new ArrayList<>();
    for (JobSheet.Rail rail : sheet.rails()) {
      figures.add(
          time.isClosed()
              ? railCalculation.figures(rail, now.all(), last, fits[rail.input()])
              : RailCalculation.ripplesOnly(rail, null));
    }
    return figures;
  }

  private Summary.LevelFigures levels(ClosingSums now) {
    return time.isClosed()
        ? LevelCalculation.figures(now.all().steady().levels(), sheet.levels())
        : null;
  }

  /** One time constant per rail that came up; call after {@link #now}, which brings the rest. */
  private FirstOrderFit[] fits() {
    FirstOrderFit[] fits = new FirstOrderFit[4];
    LastSecond last = lastSecond();
    if (last == null) {
      return fits;
    }
    for (JobSheet.Rail rail : sheet.rails()) {
      int input = rail.input();
      double finalV = last.moments(reading -> scaling.railV(reading, input)).mean();
      fits[input] =
          railStarts
              .of(input)
              .fit(
                  calibration.scale(Channel.ofRail(input)),
                  finalV,
                  time.wholeReadings(),
                  RailStarts.offsetSeconds(input));
    }
    return fits;
  }

  /** Null if it was on for less than a second, or a fifth of the last one is missing. */
  private LastSecond lastSecond() {
    if (!time.isClosed() || time.endMicros() - time.closedMicros() < LastSecond.MICROS) {
      return null;
    }
    long end = time.endMicros();
    List<Reading> last = held.readings(Math.max(time.closedMicros(), end - LastSecond.MICROS), end);
    return last.size() < LastSecond.LEAST_READINGS ? null : new LastSecond(last, scaling);
  }
}
