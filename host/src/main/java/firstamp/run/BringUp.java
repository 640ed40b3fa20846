package firstamp.run;

import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.model.samples.Reading;
import firstamp.model.text.Worded;
import firstamp.model.text.Wording.Quantity;
import java.util.List;

/**
 * A staged bring-up: one step of the sheet after the other, each with an event at its start and its
 * end, so that the table of volts, amps and ohms is in the power-up.
 *
 * <p>The steps are watched by the computer; the probe keeps the limits of the sheet, as it takes no
 * wider ones while the switch is closed. Not thread-safe but for {@link #state}: belongs to the
 * session thread.
 */
final class BringUp {
  private final RunStream stream;
  private final RunWishes wishes;
  private final SupplyController supplyHand;
  private final List<JobSheet.Step> steps;
  private final double farad;
  private volatile State state = new State(0, 0, null, false);
  private int at = -1;
  private StepWatch watch;
  private boolean over;

  /**
   * How it stands.
   *
   * @param step number, from 1; 0 = not begun
   * @param of how many
   * @param words what to do, or what was seen
   * @param done all steps are over
   */
  public record State(int step, int of, Worded words, boolean done) {}

  /**
   * Before the first step.
   *
   * @param supplyHand gives the volts of each step, null = a person does
   */
  BringUp(RunStream stream, RunWishes wishes, SupplyController supplyHand) {
    this.stream = stream;
    this.wishes = wishes;
    this.supplyHand = supplyHand;
    JobSheet sheet = stream.setup().effective();
    this.steps = sheet.steps();
    double microfarad = sheet.supply().capacitanceUf() == null ? 0 : sheet.supply().capacitanceUf();
    this.farad = microfarad * 1e-6;
  }

  State state() {
    return state;
  }

  /** Volts and limit of the first step. */
  JobSheet.Step first() {
    return steps.get(0);
  }

  void reading(Reading reading, double atMs) {
    if (over || stream.chain().state() != SwitchState.ON) {
      return;
    }
    if (at < 0) {
      begin(0);
    }
    double volts = stream.chain().scaling().supplyV(reading);
    double ampere = stream.chain().scaling().supplyA(reading);
    switch (watch.reading(atMs, volts, ampere)) {
      case WAIT -> {}
      case SAY -> happened(Happening.StepState.SEEN, watch.words());
      case GO_ON -> {
        happened(Happening.StepState.SETTLED, watch.words());
        if (at + 1 < steps.size()) {
          begin(at + 1);
        } else {
          over = true;
          happened(Happening.StepState.DONE, StepWords.of("done.event"));
          say(StepWords.of("done"), true);
        }
      }
      case STOP -> {
        over = true;
        happened(Happening.StepState.STOPPED, watch.words());
        say(watch.words(), false);
        wishes.off(OffCause.RULE);
      }
    }
  }

  /** Whether every step is over. */
  boolean done() {
    return state.done();
  }

  private void begin(int next) {
    at = next;
    JobSheet.Step step = steps.get(next);
    watch = new StepWatch(step, farad);
    Object[] values = {new Quantity(step.supplyV(), "V"), Quantity.amps(step.limitA())};
    happened(Happening.StepState.BEGUN, StepWords.of("begun", values));
    if (supplyHand == null) {
      say(StepWords.of("turn", values), false);
    } else {
      supplyHand.give(step.supplyV(), step.limitA());
      say(StepWords.of("given", values), false);
    }
  }

  private void happened(Happening.StepState step, Worded text) {
    Happening what = Happening.Step.now(at + 1, steps.size(), step, text);
    stream.accept(new ProbeEvent.Happened(stream.now(), what));
  }

  private void say(Worded words, boolean done) {
    state = new State(at + 1, steps.size(), words, done);
    stream.progress().bringUp(at + 1, steps.size(), words);
  }
}
