package firstamp.alarm;

import firstamp.model.Alarm;
import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.model.Look;
import firstamp.model.NotWatched;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.model.limits.Coverage;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.LevelWindow;
import firstamp.model.samples.Reading;
import firstamp.model.samples.RippleWindow;
import firstamp.model.samples.SamplePlan;
import java.util.ArrayList;
import java.util.List;

/**
 * All rules of one power-up, fed with its stream in the order in which it came.
 *
 * <p>Deterministic: asks no clock, so the same stream raises the same alarms at the same times. Not
 * thread-safe: one thread feeds it.
 */
public final class RuleEngine {
  private final RunState run;
  private final AlarmConditions watches;
  private final AlarmBook book;
  private final ReadingWindow now;
  private final SupplyRules supply;
  private final List<RailRules> rails = new ArrayList<>();
  private final InputRules inputs;
  private final LevelRules levels;
  private final AfterOffRules afterOff;
  private final TripJudge trips;
  private final LookJudge looks;
  private final SessionRules session;
  private final WatchedRules watched;
  private final Events events = new Events();
  private long nextReading = RunState.NEVER;

  /** Rules on a probe of the normal build and the raw stream, without a label. */
  public RuleEngine(JobSheet effective, Calibration calibration, RuleListener listener) {
    this(effective, calibration, RuleSetup.normal(), listener);
  }

  /**
   * Rules for one power-up.
   *
   * @param effective sheet with its defaults filled in
   * @param calibration of the probe
   * @param setup label, stream and probe
   * @param listener hears every alarm and every demand to switch off
   */
  public RuleEngine(
      JobSheet effective, Calibration calibration, RuleSetup setup, RuleListener listener) {
    this.run = new RunState(effective, calibration, setup);
    this.watches = new AlarmConditions(effective);
    this.watched = new WatchedRules(run, watches);
    this.book = new AlarmBook(run, listener);
    AlarmTexts texts = new AlarmTexts(effective, setup.label());
    this.now = new ReadingWindow("before-reservoir".equals(effective.supply().probeSits()));
    this.supply = new SupplyRules(run, watches, book, texts);
    for (JobSheet.Rail rail : effective.rails()) {
      rails.add(new RailRules(rail, run, watches, book, texts));
    }
    this.inputs = new InputRules(run, watches, book, texts);
    this.levels = new LevelRules(run, watches, book, texts);
    this.afterOff = new AfterOffRules(run, watches, book, texts, listener);
    this.trips = new TripJudge(run, watches, book, texts);
    this.looks = new LookJudge(run, watches, book, texts);
    this.session = new SessionRules(run, watches, book, texts);
  }

  /** An event of the probe, of the host, or of the person. */
  public void onEvent(ProbeEvent event) {
    run.input(event.micros());
    event.accept(events);
  }

  /**
   * Raw conversions, before the readings that are made from them; none on the reduced stream. How
   * the stream is cut into blocks makes no difference.
   */
  public void onConversions(ConversionBlock block) {
    run.input(SamplePlan.microsOf(block.firstIndex()));
    trips.conversions(block);
  }

  /** The next reading. */
  public void onReading(Reading reading) {
    run.input(reading.startMicros());
    session.data(reading.startMicros(), reading.endMicros());
    if (reading.firstIndex() != nextReading) {
      now.forget();
    }
    nextReading = reading.firstIndex() + SamplePlan.CONVERSIONS_PER_READING;
    if (run.setup().observe()) {
      observe(reading);
    }
    trips.reading(reading);
    boolean on = run.whileOn(reading.startMicros(), reading.endMicros());
    boolean off = run.afterOff(reading.startMicros());
    if (!on && !off) {
      return;
    }
    now.take(reading, run.scaling());
    if (on) {
      afterOff.on(now);
      supply.judge(now);
      for (RailRules rail : rails) {
        rail.judge(now, supply.awaitsDraw());
      }
      inputs.judge(now);
    } else {
      afterOff.judge(now);
    }
  }

  /** Levels of head and meter over one window. */
  public void onLevels(LevelWindow window) {
    levels.judge(window);
  }

  /** Ripple of one rail over one window. */
  public void onRipple(RippleWindow window) {
    long from = SamplePlan.microsOf(window.firstIndex());
    long to = SamplePlan.microsOf(window.endIndex());
    if (!run.whileOn(from, to) || now.held() == 0) {
      return;
    }
    for (RailRules rail : rails) {
      if (rail.input() == window.rail()) {
        rail.judgeRipple(window, now.supplyA());
      }
    }
  }

  /** The stream is over: judges what was waiting for more. */
  public void finish() {
    trips.finish();
    rails.forEach(RailRules::finish);
  }

  /** One entry per raising, each in its present state, in the order of raising. */
  public List<Alarm> alarms() {
    return book.alarms();
  }

  /** Rules that are watched, like "over-current" or "rail-window 1" (0 = the supply). */
  public List<String> watched() {
    return coverage().watched();
  }

  /** What is not watched, and why. */
  public List<NotWatched> notWatched() {
    return coverage().notWatched();
  }

  private Coverage coverage() {
    return watched.coverage(rails, inputs, levels);
  }

  private void observe(Reading reading) {
    if (!run.everClosed()
        && run.scaling().supplyV(reading) > 0.1 * run.sheet().supply().nominalV()) {
      switched(SwitchState.ON, reading.startMicros());
    }
  }

  private void switched(SwitchState state, long micros) {
    boolean before = run.on();
    run.switched(state, micros);
    if (run.on() && !before) {
      now.forget();
      trips.closed(micros);
      for (AlarmCondition watch : watches.all()) {
        watch.unknown();
      }
      supply.closed();
      for (RailRules rail : rails) {
        rail.closed();
      }
    } else if (before && !run.on()) {
      opened();
    }
  }

  private void opened() {
    now.forget();
    afterOff.opened();
  }

  private final class Events implements ProbeEvent.Visitor<Void> {
    @Override
    public Void switchChanged(ProbeEvent.SwitchChanged event) {
      switched(event.state(), event.micros());
      return null;
    }

    @Override
    public Void looked(ProbeEvent.Looked event) {
      Look look = event.look();
      run.looked(look);
      if (!afterOff.looked(look)) {
        looks.looked(look);
      }
      return null;
    }

    @Override
    public Void tripped(ProbeEvent.Tripped event) {
      boolean before = run.on();
      run.open(event.trip().openedMicros());
      if (before) {
        opened();
      }
      trips.tripped(event.trip());
      return null;
    }

    @Override
    public Void captured(ProbeEvent.Captured event) {
      trips.captured(event.capture());
      return null;
    }

    @Override
    public Void gap(ProbeEvent.Gap event) {
      now.forget();
      return null;
    }

    @Override
    public Void pressed(ProbeEvent.Pressed event) {
      return null;
    }

    @Override
    public Void linkChanged(ProbeEvent.LinkChanged event) {
      session.link(event);
      return null;
    }

    @Override
    public Void logChanged(ProbeEvent.LogChanged event) {
      session.log(event);
      return null;
    }

    @Override
    public Void marked(ProbeEvent.Marked event) {
      return null;
    }

    @Override
    public Void happened(ProbeEvent.Happened event) {
      supply.happened(event);
      if (event.what() instanceof Happening.ModeSet set) {
        run.soak(set.mode() == Happening.Mode.SOAK || set.mode() == Happening.Mode.SOAK_OVER);
      }
      levels.happened(event.what());
      return null;
    }

    @Override
    public Void acknowledged(ProbeEvent.Acknowledged event) {
      book.acknowledge(event.rule(), event.rail(), event.micros());
      return null;
    }

    @Override
    public Void noted(ProbeEvent.Noted event) {
      return null;
    }

    @Override
    public Void limitChanged(ProbeEvent.LimitChanged event) {
      run.limitChanged(event);
      return null;
    }

    @Override
    public Void told(ProbeEvent.Told event) {
      return null;
    }

    @Override
    public Void condition(ProbeEvent.ProbeCondition event) {
      return null;
    }

    @Override
    public Void runEnded(ProbeEvent.RunEnded event) {
      finish();
      return null;
    }
  }
}
