package firstamp.pipeline;

import firstamp.alarm.RuleEngine;
import firstamp.alarm.RuleListener;
import firstamp.alarm.RuleSetup;
import firstamp.analysis.figures.PowerUpFigures;
import firstamp.analysis.spectrum.LevelMeter;
import firstamp.analysis.spectrum.RippleMeter;
import firstamp.model.Alarm;
import firstamp.model.ClipMove;
import firstamp.model.JobSheet;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.ProbeHello;
import firstamp.model.SwitchState;
import firstamp.model.Trip;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Capture;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.LevelWindow;
import firstamp.model.samples.Reading;
import firstamp.model.samples.ReadingReducer;
import firstamp.model.samples.RippleWindow;
import firstamp.model.samples.SamplePlan;
import firstamp.model.samples.Scaling;
import firstamp.model.samples.Zero;
import java.util.List;

/**
 * The stream of one power-up through reduction, rules and analysis: live and in a replay the same
 * code, and the same result to the bit, however the stream is cut into blocks.
 *
 * <p>Not thread-safe: one thread feeds it.
 */
public final class Chain implements StreamSink {
  private final Calibration calibration;
  private final ProbeHello hello;
  private final ChainListener listener;
  private final RuleEngine rules;
  private final PowerUpFigures figures;
  private final LevelMeter levelMeter;
  private final RippleMeter rippleMeter;
  private final ReadingReducer reducer = new ReadingReducer(this::reading);
  private final EventHandler events = new EventHandler();
  private final SwitchHistory times = new SwitchHistory();
  private Scaling scaling;
  private Trip trip;
  private TripFigures tripFigures;
  private Capture capture;
  private String ended;
  private Reading latest;
  private boolean clipRoves;
  private boolean clipRoved;

  public Chain(
      JobSheet effective, ProbeHello hello, boolean raw, String label, ChainListener listener) {
    this.calibration = hello.calibration();
    this.hello = hello;
    this.listener = listener;
    this.scaling = new Scaling(calibration, Zero.NONE);
    this.rules =
        new RuleEngine(
            effective,
            calibration,
            new RuleSetup(label, false, !raw, hello.lookOhm(), hello.hardShortA()),
            new Rules());
    this.figures = new PowerUpFigures(effective, calibration, hello.lookOhm(), hello.hardShortA());
    this.levelMeter = new LevelMeter(effective, calibration, this::levels, figures::onDetail);
    this.rippleMeter = new RippleMeter(effective, calibration, this::ripple, figures::onRailLines);
  }

  @Override
  public void accept(ConversionBlock block) {
    figures.accept(block);
    rules.onConversions(block);
    int done = 0;
    while (done < block.counts().length) {
      long first = block.firstIndex() + done;
      int inReading = (int) Math.floorMod(first, (long) SamplePlan.CONVERSIONS_PER_READING);
      int take =
          Math.min(block.counts().length - done, SamplePlan.CONVERSIONS_PER_READING - inReading);
      // Piece by piece up to the end of each reading: what a rule sees first must not depend on how
      // the stream was cut.
      piece(first, block.counts(), done, take);
      done += take;
    }
  }

  private void piece(long first, short[] counts, int offset, int length) {
    levelMeter.accept(first, counts, offset, length);
    rippleMeter.accept(first, counts, offset, length);
    reducer.accept(first, counts, offset, length);
  }

  @Override
  public void accept(Reading reading) {
    reading(reading);
  }

  @Override
  public void accept(ProbeEvent event) {
    if (ended == null) {
      event.accept(events);
    } else {
      afterTheEnd(event);
    }
  }

  /** What was added to a finished power-up is shown, and changes nothing that was found. */
  private void afterTheEnd(ProbeEvent event) {
    if (event instanceof ProbeEvent.Marked marked) {
      listener.mark(marked.text(), ms(marked.micros()));
    } else if (event instanceof ProbeEvent.Noted noted) {
      listener.noted(noted.mark(), noted.text());
    } else if (event instanceof ProbeEvent.Acknowledged) {
      listener.seenAfterTheEnd();
    } else if (event instanceof ProbeEvent.Told told) {
      listener.told(told, ms(told.micros()));
    }
  }

  private void reading(Reading reading) {
    latest = reading;
    figures.onReading(reading);
    rules.onReading(reading);
    double atMs = ms(reading.startMicros());
    listener.reading(reading, atMs);
    if (listener.wantsFigures()) {
      listener.figures(ReadingFigures.of(reading, scaling, atMs));
    }
  }

  private void levels(LevelWindow window) {
    // A clip on its way along the path is on neither head nor meter: no rule, no figure.
    if (!clipRoves && !clipRoved) {
      figures.onLevels(window);
      rules.onLevels(window);
    }
    clipRoved = clipRoves;
    listener.levels(window);
  }

  private void ripple(RippleWindow window) {
    figures.onRipple(window);
    rules.onRipple(window);
    listener.ripple(window);
  }

  /** When the switch will close, where that is known: times before it count down to it. */
  public void closesAt(long micros) {
    times.closesAt(micros);
  }

  /**
   * Milliseconds from closing, negative before one that is known to come; where the closing is not
   * known (yet): from the start of the look, before that 0.
   */
  public double ms(long micros) {
    return times.ms(micros);
  }

  public Scaling scaling() {
    return scaling;
  }

  public SwitchState state() {
    return times.state();
  }

  /** When the switch closed, probe time; null = never. */
  public Long closedMicros() {
    return times.closedMicros();
  }

  /** When it opened again; null = not yet. */
  public Long openedMicros() {
    return times.openedMicros();
  }

  /** Whether the volts have shown that the switch is open. */
  public boolean openingSeen() {
    return times.openingSeen();
  }

  /** The last trip; null = none. */
  public Trip trip() {
    return trip;
  }

  public TripFigures tripFigures() {
    return tripFigures;
  }

  /** The capture of the last trip; null = not complete yet. */
  public Capture capture() {
    return capture;
  }

  /** Who opened the switch; null = nobody yet. */
  public OffCause offBy() {
    return times.offBy();
  }

  /** How the run ended; null = cut short. */
  public String ended() {
    return ended;
  }

  /** The latest reading; null = none. */
  public Reading latest() {
    return latest;
  }

  public List<Alarm> alarms() {
    return rules.alarms();
  }

  public RuleEngine rules() {
    return rules;
  }

  public PowerUpFigures figures() {
    return figures;
  }

  private void toAll(ProbeEvent event) {
    figures.onEvent(event);
    rules.onEvent(event);
  }

  /** Passes on what the rules say. */
  private final class Rules implements RuleListener {
    @Override
    public void onAlarm(Alarm alarm) {
      listener.alarm(alarm);
    }

    @Override
    public void onAction(String rule) {
      listener.demandsOff(rule);
    }

    @Override
    public void onOpeningSeen(long micros) {
      times.seen();
      listener.openingSeen(ms(micros));
    }
  }

  /**
   * Events by kind: first what the chain itself keeps, then rules and figures, then the listener.
   */
  private final class EventHandler implements ProbeEvent.Visitor<Void> {
    @Override
    public Void switchChanged(ProbeEvent.SwitchChanged event) {
      boolean wasOpen = times.open();
      times.changed(event);
      toAll(event);
      if (times.state() == SwitchState.ON) {
        listener.on();
      } else if (times.open() && !wasOpen) {
        listener.off(event.by(), ms(event.micros()));
      }
      return null;
    }

    @Override
    public Void looked(ProbeEvent.Looked event) {
      times.lookBegan(event.look().startMicros());
      scaling = new Scaling(calibration, event.look().zero());
      figures.onEvent(event);
      listener.look(figures.look());
      rules.onEvent(event);
      return null;
    }

    @Override
    public Void tripped(ProbeEvent.Tripped event) {
      trip = event.trip();
      tripFigures = TripFigures.of(trip, scaling, times.closedMicros(), hello.hardShortA());
      times.opened(trip.openedMicros());
      listener.trip(tripFigures);
      toAll(event);
      return null;
    }

    @Override
    public Void captured(ProbeEvent.Captured event) {
      capture = event.capture();
      toAll(event);
      return null;
    }

    @Override
    public Void gap(ProbeEvent.Gap event) {
      toAll(event);
      return null;
    }

    @Override
    public Void pressed(ProbeEvent.Pressed event) {
      toAll(event);
      listener.press(event.press(), ms(event.micros()));
      return null;
    }

    @Override
    public Void linkChanged(ProbeEvent.LinkChanged event) {
      toAll(event);
      listener.link(event.state(), event.text(), ms(event.micros()));
      return null;
    }

    @Override
    public Void logChanged(ProbeEvent.LogChanged event) {
      toAll(event);
      listener.log(event, ms(event.micros()));
      return null;
    }

    @Override
    public Void marked(ProbeEvent.Marked event) {
      listener.mark(event.text(), ms(event.micros()));
      return null;
    }

    @Override
    public Void happened(ProbeEvent.Happened event) {
      if (event.what() instanceof ClipMove move && move.roves() != null) {
        clipRoved |= clipRoves;
        clipRoves = move.roves();
      }
      toAll(event);
      listener.happened(event.what(), ms(event.micros()));
      return null;
    }

    @Override
    public Void acknowledged(ProbeEvent.Acknowledged event) {
      toAll(event);
      return null;
    }

    @Override
    public Void noted(ProbeEvent.Noted event) {
      toAll(event);
      listener.noted(event.mark(), event.text());
      return null;
    }

    @Override
    public Void limitChanged(ProbeEvent.LimitChanged event) {
      toAll(event);
      listener.limitChanged(event);
      return null;
    }

    @Override
    public Void told(ProbeEvent.Told event) {
      toAll(event);
      listener.told(event, ms(event.micros()));
      return null;
    }

    @Override
    public Void condition(ProbeEvent.ProbeCondition event) {
      toAll(event);
      return null;
    }

    @Override
    public Void runEnded(ProbeEvent.RunEnded event) {
      ended = event.ended();
      toAll(event);
      return null;
    }
  }
}
