package firstamp.run;

import firstamp.model.Alarm;
import firstamp.model.AlarmState;
import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.model.LimitKind;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.model.samples.Reading;
import firstamp.model.text.Worded;
import firstamp.model.text.Wording.Quantity;
import firstamp.pipeline.RecentHighest;
import java.util.function.Consumer;

/**
 * The modes of a run: hands in, soak, and back.
 *
 * <p>A limit that was lowered stays so until the switch is opened: the probe takes no wider one
 * while it is closed. What changes is in the stream as an event and, for the limit, as what the
 * probe accepted, so a replay shows it. Not thread-safe but for {@link #state}: belongs to the
 * session thread.
 */
final class Modes {
  private static final long LOOKED_AT_MICROS = 5_000_000;
  private static final long START_MICROS = 2_000_000;

  private final RunStream stream;
  private final RunWishes wishes;
  private final Consumer<LimitMove> limitMoves;
  private final RecentHighest recent = new RecentHighest();
  private volatile BenchMode.State state = BenchMode.State.BEGIN;
  private BenchMode waiting;
  private Double asked;
  private Double drawnIn;
  private long soakEnds;
  private boolean over;

  /**
   * The usual mode.
   *
   * @param limitMoves where a limit is asked for
   */
  Modes(RunStream stream, RunWishes wishes, Consumer<LimitMove> limitMoves) {
    this.stream = stream;
    this.wishes = wishes;
    this.limitMoves = limitMoves;
  }

  /** How it stands; any thread. */
  BenchMode.State state() {
    return state;
  }

  /**
   * Wishes for another mode.
   *
   * @param awakeProblem why the computer may fall asleep, null = it is kept awake
   * @param soakMicros how long to soak, 0 = the usual
   */
  void want(BenchMode mode, Worded awakeProblem, long soakMicros) {
    waiting = null;
    switch (mode) {
      case USUAL -> usual();
      case HANDS_IN -> {
        waiting = BenchMode.HANDS_IN;
        if (!on() || !recent.full()) {
          say(state.mode(), Soak.words("handsIn.early"));
        }
      }
      case SOAK -> {
        Worded against = Soak.refused(stream.setup().effective(), awakeProblem);
        if (against == null) {
          soakEnds = soakMicros == 0 ? Soak.USUAL_HOURS * 3_600_000_000L : soakMicros;
          waiting = BenchMode.SOAK;
        } else {
          say(state.mode(), against);
        }
      }
    }
    step();
  }

  private void usual() {
    if (state.mode() != BenchMode.USUAL) {
      set(Happening.Mode.USUAL);
    }
    say(
        BenchMode.USUAL,
        drawnIn == null ? null : Soak.words("handsIn.stays", Quantity.amps(drawnIn)));
  }

  private boolean on() {
    return stream.chain() != null && stream.chain().state() == SwitchState.ON;
  }

  void reading(Reading reading) {
    if (!on()) {
      recent.forget();
      return;
    }
    recent.take(reading, stream.chain().scaling().supplyA(reading));
  }

  /** Called once per turn. */
  void step() {
    if (!on()) {
      return;
    }
    if (waiting == BenchMode.HANDS_IN && recent.full() && inrushOver()) {
      waiting = null;
      drawIn();
    } else if (waiting == BenchMode.SOAK) {
      waiting = null;
      soakEnds += stream.now();
      set(Happening.Mode.SOAK);
      say(BenchMode.SOAK, Soak.words("soak.on"));
    }
    if (state.mode() == BenchMode.SOAK && !over) {
      double leftMs = Math.max(0, (soakEnds - stream.now()) / 1000.0);
      state = new BenchMode.State(BenchMode.SOAK, state.words(), drawnIn, leftMs);
      if (leftMs == 0) {
        over = true;
        set(Happening.Mode.SOAK_OVER);
        wishes.off(OffCause.TIME);
      }
    }
  }

  private boolean inrushOver() {
    JobSheet.Limits limits = stream.setup().effective().limits();
    Long closed = stream.chain().closedMicros();
    double inrushMs = limits == null || limits.inrushMs() == null ? 0 : limits.inrushMs();
    // What is looked at must lie wholly behind the surge and the start of a motor.
    double startMicros = Math.max(START_MICROS, inrushMs * 1000);
    return closed != null
        && stream.translator().lastMicros() - closed >= LOOKED_AT_MICROS + startMicros;
  }

  private void drawIn() {
    double limit = recent.drawnIn();
    JobSheet.Limits limits = stream.setup().effective().limits();
    Double running = drawnIn != null ? drawnIn : limits == null ? null : limits.runningA();
    if (running == null) {
      say(state.mode(), Soak.words("handsIn.noLimit"));
      return;
    }
    set(Happening.Mode.HANDS_IN);
    if (limit >= running) {
      say(BenchMode.HANDS_IN, Soak.words("handsIn.narrow", Quantity.amps(running)));
      return;
    }
    asked = limit;
    say(BenchMode.HANDS_IN, Soak.words("handsIn.drawing", Quantity.amps(limit)));
    limitMoves.accept(new LimitMove(LimitKind.RUNNING_A, 0, limit));
  }

  /** What the probe said to a moved limit. */
  void answer(LimitMove move, boolean taken, Worded why) {
    if (asked == null || move.kind() != LimitKind.RUNNING_A || move.value() != asked) {
      return;
    }
    asked = null;
    if (taken) {
      drawnIn = move.value();
      say(BenchMode.HANDS_IN, Soak.words("handsIn.drawn", Quantity.amps(drawnIn)));
    } else {
      say(BenchMode.USUAL, Soak.words("handsIn.refused", why));
    }
  }

  /** In soak whatever is raised switches off. */
  void alarm(Alarm alarm) {
    if (state.mode() == BenchMode.SOAK && alarm.state() == AlarmState.UNACKNOWLEDGED && on()) {
      wishes.off(OffCause.RULE);
    }
  }

  private void set(Happening.Mode mode) {
    stream.accept(new ProbeEvent.Happened(stream.now(), new Happening.ModeSet(mode)));
  }

  private void say(BenchMode mode, Worded words) {
    state =
        new BenchMode.State(mode, words, drawnIn, mode == BenchMode.SOAK ? state.leftMs() : null);
    stream.progress().mode(state);
  }
}
