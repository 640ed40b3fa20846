package firstamp.run;

import firstamp.model.TripCause;
import firstamp.model.text.Worded;
import firstamp.model.text.Wording.Phrase;
import firstamp.pipeline.RunRefused;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.SelfTest;
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
      Phrase cause =
          new Phrase(
              "cause."
                  + hello
                      .latchedCause()
                      .map(one -> one.name().toLowerCase(Locale.ROOT).replace('_', '-'))
                      .orElse("unknown"));
      throw new RunRefused(
          new RunRefused.Latched(
              latched, hello.latchedCause().map(one -> TripCause.ofWire(one.code())).orElse(null)),
          Refusals.say("latched", latched, cause));
    }
    if (latched == 0 && restoreTrip != 0) {
      throw refused(Refusals.say("not-latched", restoreTrip));
    }
    if (new SelfTest(hello.selfTest().bits()).refusesArming()) {
      throw refused(Refusals.failsSelfTest(hello.selfTest().bits()));
    }
  }

  private static RunRefused refused(Worded words) {
    return new RunRefused(RunRefused.Kind.ARMING, words);
  }
}
