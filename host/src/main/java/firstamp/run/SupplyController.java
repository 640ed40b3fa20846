package firstamp.run;

import firstamp.model.Happening;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.model.text.Worded;
import firstamp.pipeline.RunRefused;
import firstamp.run.talk.Refusals;
import firstamp.supply.BenchSupply;
import firstamp.supply.SupplyState;

/**
 * A bench supply beside the probe: on before arming, off as soon as the switch is open, and the
 * switch off as soon as the supply does not obey.
 *
 * <p>Never waits for the supply but at the very end. Belongs to the session thread.
 */
final class SupplyController {
  private final RunStream stream;
  private final RunWishes wishes;
  private final BenchSupply supply;
  private double volts;
  private double limitA;
  private boolean asked;
  private boolean offSent;
  private boolean failureSaid;

  SupplyController(
      RunStream stream, RunWishes wishes, BenchSupply supply, double volts, double limitA) {
    this.stream = stream;
    this.wishes = wishes;
    this.supply = supply;
    this.volts = volts;
    this.limitA = limitA;
  }

  /** Other volts and another limit; before arming: to begin with. */
  void give(double nextVolts, double nextLimitA) {
    volts = nextVolts;
    limitA = nextLimitA;
    if (asked && !offSent) {
      supply.give(volts, limitA);
    }
  }

  /**
   * Whether it gives what it should, so that the probe may be armed.
   *
   * @throws RunRefused it does not obey
   */
  boolean ready() throws RunRefused {
    if (!asked) {
      asked = true;
      supply.give(volts, limitA);
    }
    SupplyState state = supply.state();
    if (state.phase() == SupplyState.Phase.FAILED) {
      throw new RunRefused(RunRefused.Kind.ARMING, Refusals.say("supply-failed", state.problem()));
    }
    return state.phase() == SupplyState.Phase.ON;
  }

  /** Once per turn. */
  void step() {
    if (stream.chain() == null) {
      return;
    }
    SwitchState state = stream.chain().state();
    boolean open = state == SwitchState.OFF || state == SwitchState.TRIPPED;
    if (open && stream.chain().offBy() != null && asked) {
      off();
    }
    SupplyState now = supply.state();
    if (now.phase() == SupplyState.Phase.FAILED && !failureSaid) {
      failureSaid = true;
      said(Refusals.say("supply-said", now.problem()));
      if (!open) {
        wishes.off(OffCause.RULE);
      }
    }
  }

  private void off() {
    if (!offSent) {
      offSent = true;
      supply.off();
    }
  }

  /** The run is over, whatever happened: off, and a missing confirmation is reported. */
  void end() {
    off();
    supply.close();
    if (!supply.confirmedOff() && !failureSaid) {
      said(Refusals.say("supply-not-off"));
    }
  }

  private void said(Worded said) {
    stream.accept(new ProbeEvent.Happened(stream.now(), Happening.SupplySaid.now(said)));
  }
}
