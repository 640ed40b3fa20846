package firstamp.study;

import firstamp.log.LogException;
import firstamp.log.PowerUpReader;
import firstamp.log.stream.StreamSink;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.model.Trip;
import firstamp.model.TripCause;
import firstamp.model.samples.Channel;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import firstamp.model.samples.SamplePlan;
import firstamp.model.samples.Zero;
import firstamp.protocol.rules.TripDecision;
import firstamp.protocol.rules.TripRules;
import firstamp.protocol.rules.Zeros;
import firstamp.protocol.values.TripLimits;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.Set;

/**
 * Where the probe of a logged power-up would have opened its switch under other limits.
 *
 * <p>Conversions are judged by their own time, whatever the order in which they and the events came
 * in. Limits that somebody moved then are left out: the other ones are in force throughout. Not
 * thread-safe.
 */
final class ProbeWhatIf implements StreamSink {
  private static final int OPEN_CLIP_COUNTS = 1023;

  private final TripLimits limits;
  private final Deque<On> closings;
  private final boolean[] clipped = new boolean[4];
  private TripRules rules;
  private Cut cut;

  /**
   * The end of what can be told from the record.
   *
   * @param endIndex conversions before this one were made
   * @param micros when the switch opens, or the record ends
   * @param trip that the probe would have reported; null = the record ends, because then a limit or
   *     a rule switched off that these limits do not hold
   */
  record Cut(long endIndex, long micros, Trip trip) {}

  /**
   * A stretch with the switch closed; {@code byThenAlone}: ended by the limits or rules of then.
   */
  private record On(Zero zero, long fromIndex, long openedMicros, boolean byThenAlone) {
    long endIndex() {
      return openedMicros == Long.MAX_VALUE ? Long.MAX_VALUE : SamplePlan.indexAt(openedMicros) + 1;
    }
  }

  private ProbeWhatIf(TripLimits limits, Deque<On> closings) {
    this.limits = limits;
    this.closings = closings;
  }

  /** Reads the whole power-up; null = these limits change nothing of what was recorded. */
  static Cut find(PowerUpReader reader, TripLimits limits) throws LogException {
    ProbeWhatIf whatIf = new ProbeWhatIf(limits, closings(reader.events()));
    try {
      reader.replay(whatIf);
    } catch (ReplayPowerUp.Stopped found) {
      return whatIf.cut;
    }
    On last = whatIf.closings.peek();
    return last != null && last.byThenAlone() ? endOfRecord(last) : null;
  }

  private static Deque<On> closings(Iterable<ProbeEvent> events) {
    Set<Long> trippedByLimit = new HashSet<>();
    for (ProbeEvent event : events) {
      if (event instanceof ProbeEvent.Tripped tripped && byLimit(tripped.trip().cause())) {
        trippedByLimit.add(tripped.micros());
      }
    }
    Deque<On> closings = new ArrayDeque<>();
    Zero zero = Zero.NONE;
    Long closed = null;
    for (ProbeEvent event : events) {
      if (event instanceof ProbeEvent.Looked looked) {
        zero = looked.look().zero();
      } else if (event instanceof ProbeEvent.SwitchChanged changed) {
        if (closed != null) {
          boolean then = changed.by() == OffCause.RULE || trippedByLimit.contains(changed.micros());
          closings.add(new On(zero, SamplePlan.indexAt(closed), changed.micros(), then));
        }
        closed = changed.state() == SwitchState.ON ? (Long) changed.micros() : null;
      }
    }
    if (closed != null) {
      closings.add(new On(zero, SamplePlan.indexAt(closed), Long.MAX_VALUE, false));
    }
    return closings;
  }

  private static boolean byLimit(TripCause cause) {
    return cause == TripCause.OVER_VOLTAGE || cause.overCurrent() && cause != TripCause.HARD_SHORT;
  }

  private static Cut endOfRecord(On on) {
    return new Cut(on.endIndex(), on.openedMicros(), null);
  }

  @Override
  public void conversions(ConversionBlock block) {
    for (int k = 0; k < block.counts().length; k++) {
      conversion(block.firstIndex() + k, block.counts()[k]);
    }
  }

  private void conversion(long index, int counts) {
    On on = closings.peek();
    if (on != null && index >= on.endIndex()) {
      if (on.byThenAlone()) {
        stop(endOfRecord(on));
      }
      closings.remove();
      rules = null;
      on = closings.peek();
    }
    if (on == null || index < on.fromIndex()) {
      seeClip(index, counts);
      return;
    }
    rules = rules == null ? rules(on) : rules;
    TripDecision decision = rules.conversion(index, counts);
    if (decision != null) {
      stop(trip(decision, index));
    }
  }

  private void stop(Cut found) {
    cut = found;
    throw new ReplayPowerUp.Stopped();
  }

  private void seeClip(long index, int counts) {
    int rail = SamplePlan.channelAt(index).ordinal() - Channel.R1.ordinal() + 1;
    if (rail >= 1 && rail <= 3 && counts < OPEN_CLIP_COUNTS) {
      clipped[rail] = true;
    }
  }

  /** An open clip is not watched, as it was not then. */
  private TripRules rules(On on) {
    TripLimits watched = limits;
    for (int rail = 1; rail <= 3; rail++) {
      watched = clipped[rail] ? watched : watched.withoutRail(rail);
    }
    Zero zero = on.zero();
    Zeros zeros = new Zeros(zero.sixteenthsI(), zero.sixteenthsJ(), zero.sixteenthsV());
    return new TripRules(watched, zeros, on.fromIndex());
  }

  private Cut trip(TripDecision decision, long index) {
    long decided = SamplePlan.microsOf(index);
    long opened = decided + TripRules.PIN_LOW_MICROS;
    Trip trip =
        new Trip(
            1,
            TripCause.ofWire(decision.cause().code()),
            decision.channel(),
            decision.confirmed(),
            decision.crossedTickMicros(),
            decided,
            opened,
            decision.value(),
            decision.limit(),
            rules.i2tCounts2(),
            rules.i2tBudgetCounts2(),
            null,
            null);
    return new Cut(index + 1, opened, trip);
  }

  @Override
  public void reading(Reading reading) {
    // Readings alone cannot tell what conversions in a row would have done.
  }

  @Override
  public void event(ProbeEvent event) {
    // All of them were looked at before.
  }
}
