package firstamp.run;

import firstamp.model.TripCause;
import firstamp.pipeline.RunRefused;
import firstamp.protocol.ProbeMessage;
import firstamp.protocol.SelfTest;
import firstamp.run.talk.Refusals;
import java.util.Locale;

/** Whether a probe that has just said who it is may be armed at all. */
final class ArmCheck {
  private ArmCheck() {}

  /**
   * Checks trip and self-test.
   *
   * @param restoreTrip number of the trip to switch on again after, 0 = none
   */
  static void check(ProbeMessage.Hello hello, int restoreTrip) throws RunRefused {
    int latched = hello.latchedTrip();
    if (latched != 0 && restoreTrip != latched) {
      String cause =
          hello
              .latchedCause()
              .map(one -> one.name().toLowerCase(Locale.ROOT).replace('_', '-'))
              .orElse("unknown");
      throw new RunRefused(
          new RunRefused.Latched(
              latched, hello.latchedCause().map(one -> TripCause.ofWire(one.code())).orElse(null)),
          "the probe box has switched itself off before: number "
              + latched
              + ", cause "
              + cause
              + ". Find out why; then switch on again with `--restore "
              + latched
              + "`.");
    }
    if (latched == 0 && restoreTrip != 0) {
      throw refused(
          "--restore "
              + restoreTrip
              + " was given, but the probe box has not switched itself off. Leave it out.");
    }
    if (new SelfTest(hello.selfTest().bits()).refusesArming()) {
      throw refused(Refusals.failsSelfTest(hello.selfTest().bits()));
    }
  }

  private static RunRefused refused(String words) {
    return new RunRefused(RunRefused.Kind.ARMING, words);
  }
}
