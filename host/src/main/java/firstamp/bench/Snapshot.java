package firstamp.bench;

import firstamp.analysis.figures.TripPeak;
import firstamp.model.Alarm;
import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.model.NotWatched;
import firstamp.model.Priority;
import firstamp.model.ProbeEvent;
import firstamp.model.Summary;
import firstamp.model.TripCause;
import firstamp.model.text.Worded;
import firstamp.pipeline.RunRefused;
import firstamp.run.LimitMove;
import firstamp.run.questions.OpenQuestion;
import firstamp.study.EarlierPowerUp;
import firstamp.trend.Course;
import firstamp.trend.TimeCourse;
import java.util.List;
import java.util.Objects;

/**
 * What there is to see of a power-up at one moment.
 *
 * <p>Immutable. A null component is not known, not measurable or does not apply; it is never 0 or
 * NaN instead. "Course time" is the time base of {@link Course}, milliseconds; times of alarms
 * count from the closing of the switch as everywhere else.
 *
 * @param phase where the power-up stands
 * @param kind what stands behind it
 * @param powerUp number in the bench log, null before it has one
 * @param label of the power-up, null = none
 * @param sheet the job sheet with its defaults filled in
 * @param notice one sentence of what is being waited for or was refused, null = nothing to say
 * @param countdownS whole seconds until the switch closes, null = no countdown runs
 * @param times the moment shown, and the switch-on
 * @param figures what is measured now
 * @param limits in force in the probe
 * @param findings what was found so far
 * @param link the cable
 * @param log the bench log
 * @param marks in order of time
 * @param questions that wait for an answer, in the order in which they are asked
 * @param course readings so far; the same object in every snapshot of a session
 * @param replay position of a replay, null when live
 * @param beside what stands beside the power-up itself
 */
public record Snapshot(
    Phase phase,
    Kind kind,
    Integer powerUp,
    String label,
    JobSheet sheet,
    Worded notice,
    Integer countdownS,
    Times times,
    Figures figures,
    Limits limits,
    Findings findings,
    Link link,
    Log log,
    List<Mark> marks,
    List<OpenQuestion> questions,
    TimeCourse course,
    Replay replay,
    Beside beside) {

  /** Copies the lists. */
  public Snapshot {
    Objects.requireNonNull(phase, "phase");
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(sheet, "sheet");
    Objects.requireNonNull(times, "times");
    Objects.requireNonNull(figures, "figures");
    Objects.requireNonNull(limits, "limits");
    Objects.requireNonNull(findings, "findings");
    Objects.requireNonNull(link, "link");
    Objects.requireNonNull(log, "log");
    Objects.requireNonNull(course, "course");
    Objects.requireNonNull(beside, "beside");
    marks = List.copyOf(marks);
    questions = List.copyOf(questions);
  }

  /** The same with something else beside it. */
  public Snapshot with(Beside other) {
    return new Snapshot(
        phase,
        kind,
        powerUp,
        label,
        sheet,
        notice,
        countdownS,
        times,
        figures,
        limits,
        findings,
        link,
        log,
        marks,
        questions,
        course,
        replay,
        other);
  }

  /**
   * The moment shown, and the switch-on.
   *
   * @param nowMs course time shown as now: the newest reading, in a replay its position
   * @param closedMs course time at which the switch closed last, null before
   * @param elapsedMs since that closing; stands still once the switch has opened; null before
   * @param openingSeen whether the volts have shown that the switch is open; as long as they have
   *     not, "off" is what the pin says and no more
   */
  public record Times(double nowMs, Double closedMs, Double elapsedMs, boolean openingSeen) {
    /** Nothing is left to be shown. */
    public Times(double nowMs, Double closedMs, Double elapsedMs) {
      this(nowMs, closedMs, elapsedMs, true);
    }
  }

  /**
   * What is measured now.
   *
   * @param supplyA supply current
   * @param supplyV volts on the set side
   * @param rails clips of the sheet, in its order
   * @param levels of meter and head
   */
  public record Figures(Double supplyA, Double supplyV, List<Rail> rails, Levels levels) {
    /** Copies the list. */
    public Figures {
      Objects.requireNonNull(levels, "levels");
      rails = List.copyOf(rails);
    }
  }

  /**
   * Levels of meter and head now; null = no signal, or not measured.
   *
   * @param headDbv level of the head
   * @param headUa the same as current where the resistor is known, microampere rms
   * @param meterDbv level of the meter
   */
  public record Levels(Double headDbv, Double headUa, Double meterDbv) {
    /** Meter minus head, null where one is missing or shows no signal. */
    public Double headBelowMeterDb() {
      return headDbv == null || meterDbv == null ? null : (Double) (meterDbv - headDbv);
    }
  }

  /**
   * What was found so far.
   *
   * @param alarms first one first, the ones folded under it behind it
   * @param look figures of the first look
   * @param trip the latest trip
   * @param notWatched what is not watched, and why
   * @param summary once ended
   */
  public record Findings(
      List<Alarm> alarms,
      Summary.LookFigures look,
      TripView trip,
      List<NotWatched> notWatched,
      Summary summary) {
    /** Copies the lists. */
    public Findings {
      alarms = List.copyOf(alarms);
      notWatched = List.copyOf(notWatched);
    }
  }

  /**
   * What stands beside a power-up.
   *
   * @param earlier another power-up of the set to be drawn behind, null = none
   * @param sleptAtEpochMs when the computer went to sleep while the set was on, by its clock; null
   *     = it did not
   * @param moved the latest moved limit, null = none
   * @param whatIf what other limits would have done (replay), null = nobody asked
   * @param stopped whether a countdown was stopped and the go is asked for again
   * @param latched what the probe box remembers and stays off for, null = nothing
   * @param lookScale what the first look is measured with, null before the probe has said so
   * @param said what was done to the set so far, in order
   * @param told what the person has told about the power-up
   * @param untouchedOffInS seconds until it switches off because nobody is there, 0 = it has; null
   *     = somebody is
   * @param neverAnswered whether no probe box has answered on the port
   */
  public record Beside(
      EarlierPowerUp earlier,
      Long sleptAtEpochMs,
      Moved moved,
      WhatIf whatIf,
      boolean stopped,
      RunRefused.Latched latched,
      LookScale lookScale,
      List<Said> said,
      List<ProbeEvent.Told> told,
      Integer untouchedOffInS,
      boolean neverAnswered) {
    /** Nothing. */
    public static final Beside NOTHING = new Beside(null, null, null, null, false);

    /** Nothing told, somebody there. */
    public Beside(
        EarlierPowerUp earlier,
        Long sleptAtEpochMs,
        Moved moved,
        WhatIf whatIf,
        boolean stopped,
        RunRefused.Latched latched,
        LookScale lookScale,
        List<Said> said) {
      this(
          earlier,
          sleptAtEpochMs,
          moved,
          whatIf,
          stopped,
          latched,
          lookScale,
          said,
          List.of(),
          null,
          false);
    }

    /** A probe box that remembers nothing. */
    public Beside(
        EarlierPowerUp earlier, Long sleptAtEpochMs, Moved moved, WhatIf whatIf, boolean stopped) {
      this(earlier, sleptAtEpochMs, moved, whatIf, stopped, null, null, List.of());
    }

    /** Copies the list. */
    public Beside {
      said = List.copyOf(said);
      told = List.copyOf(told);
    }

    /** Whether the set records, as the person has said last. */
    public Happening.RecordState recording() {
      Happening.RecordState state = Happening.RecordState.UNKNOWN;
      for (Said one : said) {
        if (one.what() instanceof Happening.Recording recording) {
          state = recording.state();
        }
      }
      return state;
    }
  }

  /**
   * Something that was done to the set.
   *
   * @param ms time of the course
   * @param what was done
   */
  public record Said(double ms, Happening what) {}

  /**
   * A moved limit.
   *
   * @param move the wish
   * @param state the result
   * @param why it was refused, null otherwise
   */
  public record Moved(LimitMove move, MoveState state, Worded why) {}

  /** The answer to a moved limit. */
  public enum MoveState {
    /** On its way to the probe. */
    ASKED,
    /** The probe acts on it. */
    TAKEN,
    /** It stays as it was. */
    REFUSED,
    /** The switch is open for good: it holds from the next switching on. */
    NEXT_TIME
  }

  /**
   * What other limits would have done to a logged power-up.
   *
   * @param sheet with the other limits
   * @param share of the power-up worked through, 1 = all
   * @param alarms that would have been raised, as they stood in the end
   * @param firstOffMs course time at which one of them would have switched off, null = none would
   * @param firstOff words for it
   */
  public record WhatIf(
      JobSheet sheet,
      double share,
      List<Alarm> alarms,
      Double firstOffMs,
      Worded firstOff,
      Judged judged) {
    /** Copies the list. */
    public WhatIf {
      alarms = List.copyOf(alarms);
    }

    /** While it is being worked out. */
    static WhatIf working(JobSheet sheet, double share) {
      return new WhatIf(sheet, share, List.of(), null, null, Judged.ALL);
    }

    /** The probe of the record cannot watch these limits. */
    static WhatIf refused(JobSheet sheet, Worded why) {
      return new WhatIf(sheet, 1, List.of(), null, why, Judged.NOTHING);
    }
  }

  /** How much of what another sheet would have done could be worked out. */
  public enum Judged {
    /** The probe's limits and the host's rules. */
    ALL,
    /** The host's rules alone: no single conversions were logged. */
    RULES_ONLY,
    /** Nothing: these limits cannot be set on that probe. */
    NOTHING
  }

  /** Where a power-up stands. */
  public enum Phase {
    /** No answer from the probe yet. */
    CONNECTING,
    /** Conversions come, the switch is open, nothing is under way (or a question waits). */
    OPEN,
    /** The probe checks that nothing flows and takes the zeros. */
    CHECK,
    /** The supply is joined through the look resistor. */
    LOOK,
    /** The switch is closed. */
    ON,
    /** The switch has opened; rails are followed until they are down. */
    RAILS_FALLING,
    /** The probe opened the switch by itself; rails are followed, a restore is possible. */
    TRIPPED,
    /** The power-up is over; {@link Snapshot#summary()} is there. */
    ENDED
  }

  /** What stands behind the power-up. */
  public enum Kind {
    /** A probe on a port. */
    PROBE,
    /** The emulated probe: nothing real is switched. */
    EMULATED,
    /** A logged power-up. */
    REPLAY
  }

  /**
   * One rail now.
   *
   * @param input 1 to 3
   * @param name from the sheet
   * @param volts signed against chassis, null = the clip is off
   * @param lowV lower edge of its window, null = not watched
   * @param highV upper edge of its window, null = not watched
   * @param judged whether the window counts yet (it rests until the rail may have settled)
   */
  public record Rail(
      int input, String name, Double volts, Double lowV, Double highV, boolean judged) {}

  /**
   * Limits to draw in; null = not watched.
   *
   * @param inrushA limit of the probe within the inrush time
   * @param inrushMs the inrush time from closing
   * @param runningA limit of the probe after it
   * @param lowV of the supply
   * @param highV of the supply
   */
  public record Limits(
      Double inrushA, Double inrushMs, Double runningA, Double lowV, Double highV) {}

  /**
   * A trip and the current around it, ready to draw.
   *
   * @param number that a restore has to give back
   * @param cause why
   * @param railName of an over-voltage, null otherwise
   * @param atMs when the switch opened, from closing; null if it had not closed in this session
   * @param value what was seen
   * @param atMost whether the value is an upper bound
   * @param limit what it was compared with
   * @param unit of value and limit
   * @param limitCrossedToOffMs from the limit crossed to the switch open
   * @param captureA supply current, ampere, one value per conversion; null until it has come
   * @param captureFirstMs time of its first value, zero = limit crossed
   * @param captureStepMs from value to value
   * @param highest supply current of the trip, null = none is known
   * @param selfTestBits what the self-test found, 0 = nothing, or it did not say
   */
  public record TripView(
      int number,
      TripCause cause,
      String railName,
      Double atMs,
      Double value,
      boolean atMost,
      Double limit,
      String unit,
      Double limitCrossedToOffMs,
      List<Float> captureA,
      double captureFirstMs,
      double captureStepMs,
      TripPeak highest,
      int selfTestBits) {
    /** Copies the list. */
    public TripView {
      Objects.requireNonNull(cause, "cause");
      captureA = captureA == null ? null : List.copyOf(captureA);
    }
  }

  /**
   * The cable.
   *
   * @param state now
   * @param port as the person named it, null = none
   * @param text what is wrong and what to try, null when good
   * @param lostConversions conversions that never came
   * @param reduced whether only readings come (no tone or hum figures)
   */
  public record Link(
      LinkState state, String port, String text, long lostConversions, boolean reduced) {}

  /** State of the cable. */
  public enum LinkState {
    /** Not answered yet. */
    CONNECTING,
    /** Data comes. */
    GOOD,
    /** Nothing comes. */
    LOST,
    /** The probe was restarted: its switch is off. */
    PROBE_RESTARTED,
    /** There is none: emulated or replayed. */
    NONE
  }

  /**
   * The bench log.
   *
   * @param logging whether everything is being written
   * @param file where
   * @param text what is wrong and what to try, null when good
   */
  public record Log(boolean logging, String file, String text) {}

  /**
   * A mark.
   *
   * @param ms course time
   * @param text may be empty
   */
  public record Mark(double ms, String text) {}

  /**
   * Position of a replay.
   *
   * @param fromMs course time of the start
   * @param toMs course time of the end
   * @param speed factor
   * @param held whether it holds
   * @param events alarms, trips, marks of the power-up as it was logged, in order of time
   */
  public record Replay(
      double fromMs, double toMs, double speed, boolean held, List<ReplayEvent> events) {
    /** Copies the list. */
    public Replay {
      events = List.copyOf(events);
    }
  }

  /**
   * Something on the time bar of a replay.
   *
   * @param ms course time
   * @param kind what
   * @param text in words
   * @param priority of an alarm, null for all else
   */
  public record ReplayEvent(double ms, EventKind kind, String text, Priority priority) {
    /** An event that is no alarm. */
    public ReplayEvent(double ms, EventKind kind, String text) {
      this(ms, kind, text, null);
    }
  }

  /** Kinds of {@link ReplayEvent}. */
  public enum EventKind {
    /** The switch closed. */
    ON,
    /** The switch opened on somebody's wish. */
    OFF,
    /** An alarm was raised. */
    ALARM,
    /** The probe opened the switch by itself. */
    TRIP,
    /** A mark. */
    MARK
  }
}
