package firstamp.run;

import firstamp.model.JobSheet;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.model.text.Worded;
import firstamp.pipeline.PlannedSettings;
import firstamp.pipeline.ProbeSettings;
import firstamp.pipeline.RunRefused;
import firstamp.protocol.message.HostMessage;
import firstamp.run.talk.Refusals;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Queue;
import java.util.Set;

/**
 * Brings moved limits to the probe, one after the other, and takes note only of what the probe has
 * accepted.
 *
 * <p>Not thread-safe: belongs to the session thread.
 */
final class LimitMoves {
  private final RunStream stream;
  private final Answers answers;
  private final Queue<LimitMove> wanted = new ArrayDeque<>();
  private JobSheet sheet;
  private LimitMove asked;

  /** Takes note of what came of a moved limit. */
  @FunctionalInterface
  interface Answers {
    /**
     * The answer.
     *
     * @param taken the probe acts on it
     * @param why it does not, null if it does
     */
    void answer(LimitMove move, boolean taken, Worded why);
  }

  LimitMoves(RunStream stream, Answers answers) {
    this.stream = stream;
    this.answers = answers;
    this.sheet = stream.setup().effective();
  }

  void want(LimitMove move) {
    wanted.add(move);
  }

  /** The command was overtaken by a more urgent one; its answer is of no interest. */
  void forget() {
    if (asked != null) {
      tell(asked, false, Refusals.say("limit.overtaken"));
      asked = null;
    }
  }

  /**
   * Asks for the next move or takes the answer to the last one.
   *
   * @param openRails inputs whose clip is joined to nothing
   * @return whether an answer is waited for: nothing else may be asked then
   */
  boolean step(Set<Integer> openRails) throws IOException {
    if (asked != null) {
      switch (stream.talk().answer()) {
        case WAITING -> {
          return true;
        }
        case ACCEPTED -> taken();
        case REFUSED -> refused(Refusals.words(stream.talk().refusal()));
        default -> refused(Refusals.say("limit.silent"));
      }
    }
    LimitMove next = wanted.poll();
    if (next == null) {
      return false;
    }
    if (next.widens(sheet) && stream.chain().state() != SwitchState.OFF) {
      asked = next;
      refused(Refusals.say("limit.wider"));
      return false;
    }
    return ask(next, openRails);
  }

  private boolean ask(LimitMove next, Set<Integer> openRails) throws IOException {
    asked = next;
    try {
      PlannedSettings settings = new ProbeSettings(next.on(sheet)).plan(stream.hello(), openRails);
      stream.talk().ask(new HostMessage.SetLimits(settings.limits()));
      return true;
    } catch (RunRefused unfit) {
      refused(unfit.words());
      return false;
    }
  }

  private void taken() {
    LimitMove move = asked;
    asked = null;
    sheet = move.on(sheet);
    stream.accept(
        new ProbeEvent.LimitChanged(stream.now(), move.kind(), move.rail(), move.value()));
    tell(move, true, null);
  }

  private void refused(Worded why) {
    LimitMove move = asked;
    asked = null;
    tell(move, false, why);
  }

  private void tell(LimitMove move, boolean taken, Worded why) {
    answers.answer(move, taken, why);
    stream.progress().limitAnswer(move, taken, why);
  }
}
