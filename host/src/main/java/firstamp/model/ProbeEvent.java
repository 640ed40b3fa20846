package firstamp.model;

import firstamp.model.samples.Capture;
import firstamp.model.text.Worded;

/**
 * Everything that happens in a power-up other than conversions and readings, in probe time.
 *
 * <p>The stream of conversions and of these events, in the order in which they came, is all that
 * rules and analysis see, live and in a replay; so the log keeps every one of them.
 */
public sealed interface ProbeEvent {
  /**
   * When, microseconds since the probe's start, unwrapped; for events of the host: its estimate of
   * the probe's time.
   */
  long micros();

  /** Calls the method for the kind of event. */
  <R> R accept(Visitor<R> visitor);

  /** The switch changed its state. */
  record SwitchChanged(long micros, SwitchState state, OffCause by) implements ProbeEvent {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.switchChanged(this);
    }
  }

  /** The look is over. */
  record Looked(long micros, Look look) implements ProbeEvent {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.looked(this);
    }
  }

  /** The probe opened the switch by itself; {@code micros} is when the pin went low. */
  record Tripped(long micros, Trip trip) implements ProbeEvent {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.tripped(this);
    }
  }

  /** The capture of a trip is complete. */
  record Captured(long micros, Capture capture) implements ProbeEvent {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.captured(this);
    }
  }

  /** Conversions that never came: from {@code firstIndex} on, {@code conversions} of them. */
  record Gap(long micros, long firstIndex, long conversions) implements ProbeEvent {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.gap(this);
    }
  }

  /** Button or pedal. */
  record Pressed(long micros, Press press) implements ProbeEvent {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.pressed(this);
    }
  }

  /** The cable: lost, back, or the probe was restarted. */
  record LinkChanged(long micros, LinkState state, String text) implements ProbeEvent {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.linkChanged(this);
    }
  }

  /**
   * Whether the log is being written.
   *
   * @param text the sentence about it in English, as the log keeps it
   * @param words the same before any language; null = it was read from a log
   */
  record LogChanged(long micros, boolean logging, String text, Worded words) implements ProbeEvent {
    /** As it was read from a log. */
    public LogChanged(long micros, boolean logging, String text) {
      this(micros, logging, text, null);
    }

    /** As it happens. */
    public static LogChanged now(long micros, boolean logging, Worded words) {
      return new LogChanged(micros, logging, words.english(), words);
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.logChanged(this);
    }
  }

  /** A note of the person with its time; it does not affect rules or figures. */
  record Marked(long micros, String text) implements ProbeEvent {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.marked(this);
    }
  }

  /** Something that rules and figures have to know. */
  record Happened(long micros, Happening what) implements ProbeEvent {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.happened(this);
    }
  }

  /**
   * The person has seen an alarm ({@code rail} 0 = not about a rail); an empty rule means all that
   * are active.
   */
  record Acknowledged(long micros, String rule, int rail) implements ProbeEvent {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.acknowledged(this);
    }
  }

  /**
   * Words for a mark that was put before; the latest ones hold.
   *
   * @param mark 1 = the first mark of the power-up
   */
  record Noted(long micros, int mark, String text) implements ProbeEvent {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.noted(this);
    }
  }

  /**
   * The probe has taken another limit.
   *
   * @param rail 1 to 3 for a limit of a rail, else 0
   * @param value in the unit of the kind
   */
  record LimitChanged(long micros, LimitKind limit, int rail, double value) implements ProbeEvent {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.limitChanged(this);
    }
  }

  /** The probe's self-test bits or inputs changed while running. */
  record ProbeCondition(long micros, int inputBits, int selfTestBits) implements ProbeEvent {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.condition(this);
    }
  }

  /** The run is over; the last event of a power-up that was not cut short. */
  record RunEnded(long micros, String ended) implements ProbeEvent {
    @Override
    public <R> R accept(Visitor<R> visitor) {
      return visitor.runEnded(this);
    }
  }

  /**
   * What the person has entered about a power-up. Kept and shown; no rule and no figure depends on
   * it.
   */
  sealed interface Told extends ProbeEvent {
    @Override
    default <R> R accept(Visitor<R> visitor) {
      return visitor.told(this);
    }
  }

  /**
   * A question before the power-up was answered with yes.
   *
   * @param question its identifier
   * @param answeredEpochMs when, by the computer's clock; earlier than the power-up where the
   *     answer still held
   */
  record Answered(long micros, String question, long answeredEpochMs) implements Told {}

  /** How the set was left before it was switched on. */
  record ConditionsSaid(long micros, Conditions conditions) implements Told {}

  /**
   * Switched on again after a trip: what is different now.
   *
   * @param afterTrip number of the trip
   * @param difference as answered
   * @param rail whose resistance to the chassis was measured with the supply off, 0 = none
   * @param ohm that resistance, null = not measured
   * @param halfV volts to which the supply was turned down instead, null = not turned down
   */
  record SwitchedOnAgain(
      long micros, int afterTrip, Difference difference, int rail, Double ohm, Double halfV)
      implements Told {}

  /** Why it was switched off; the latest one holds. May be added after the end. */
  record OffExplained(long micros, OffReason reason) implements Told {}

  /** Kinds of press. */
  enum Press {
    /** Button pressed: an off. */
    BUTTON,
    /** Pedal tapped: mark, seen, next. */
    PEDAL_TAP,
    /** Pedal held: an off. */
    PEDAL_HELD
  }

  /** States of the cable. */
  enum LinkState {
    /** Nothing came for the silence limit, or the port is gone. */
    LOST,
    /** The same probe answers again, with the same start. */
    RESTORED,
    /** The probe was restarted: its switch is off. */
    PROBE_RESTARTED
  }

  /** One method per kind of event. */
  interface Visitor<R> {
    /** The switch changed. */
    R switchChanged(SwitchChanged event);

    /** The look is over. */
    R looked(Looked event);

    /** A trip. */
    R tripped(Tripped event);

    /** Its capture. */
    R captured(Captured event);

    /** Conversions lost. */
    R gap(Gap event);

    /** Button or pedal. */
    R pressed(Pressed event);

    /** The cable. */
    R linkChanged(LinkChanged event);

    /** The log. */
    R logChanged(LogChanged event);

    /** A mark. */
    R marked(Marked event);

    /** A clip moved, a mode, a step, a change. */
    R happened(Happened event);

    /** Seen. */
    R acknowledged(Acknowledged event);

    /** Words for a mark. */
    R noted(Noted event);

    /** Another limit. */
    R limitChanged(LimitChanged event);

    /** What the person has entered; nothing is judged by it. */
    R told(Told event);

    /** Inputs or self-test. */
    R condition(ProbeCondition event);

    /** The run is over. */
    R runEnded(RunEnded event);
  }
}
