package firstamp.run.calibration;

import firstamp.analysis.calibrate.SettledSecond;
import firstamp.analysis.figures.LookCalculation;
import firstamp.model.ProbeHello;
import firstamp.model.Summary;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.Capture;
import firstamp.model.samples.Channel;
import firstamp.model.samples.Scaling;
import firstamp.model.text.Wording.Quantity;
import firstamp.pipeline.RunRefused;
import firstamp.protocol.values.LookParameters;
import firstamp.run.talk.Refusals;
import java.io.IOException;
import java.util.Set;

/** What is done with a resistor on the set terminals: a known current, and a trip on purpose. */
public final class ResistorTrial {
  private static final double LIMIT_SHARE = 0.6;
  private static final double LEAST_A = 0.2;
  private static final double MOST_A = 5;
  private static final double CURRENT_LIMIT_A = 3;
  private static final double SLOWEST_MS = 1.0;
  private static final double GONE_COUNTS = 4;
  private static final int TAIL = 64;
  private static final long TRIP_NANOS = 1_500_000_000L;

  private final CalibrationTalk talk;

  /** Over a conversation that the caller closes. */
  public ResistorTrial(CalibrationTalk talk) {
    this.talk = talk;
  }

  /**
   * How the trial ended.
   *
   * @param currentA highest current of the capture, up to the decision
   * @param limitA limit that was set
   * @param afterMs from closing to the switch pin low
   * @param gone whether the current was gone afterwards
   * @param works all of it within what the probe promises
   */
  public record Cut(double currentA, double limitA, double afterMs, boolean gone, boolean works) {}

  /**
   * A second of steady current through the resistor, the switch opened again after it.
   *
   * @param holdNanos how much longer the current flows, for the person to read the meter
   */
  public SettledSecond current(ProbeHello hello, Calibration calibration, long holdNanos)
      throws IOException, RunRefused {
    boolean on =
        talk.switchOn(
            Resistor.limits(calibration, CURRENT_LIMIT_A),
            Resistor.look(calibration, hello.lookOhm(), true));
    if (!on) {
      throw notOn();
    }
    talk.hold(holdNanos);
    SettledSecond second = talk.settled(Set.of(Channel.I));
    talk.switchOff();
    return second;
  }

  /**
   * Sets a limit under the resistor's current and switches on.
   *
   * @throws RunRefused there is no resistor, or the probe does not switch on, or nothing tripped
   */
  public Cut tryTheCut(ProbeHello hello, Calibration calibration) throws IOException, RunRefused {
    LookParameters parameters = Resistor.look(calibration, hello.lookOhm(), false);
    talk.look(Resistor.limits(calibration, CURRENT_LIMIT_A), parameters);
    Summary.LookFigures found = LookCalculation.of(talk.lookResult(), calibration, hello.lookOhm());
    if (!talk.lookResult().result().letsClose() || found.ohm() == null || found.supplyV() == null) {
      throw notOn();
    }
    double expectedA = found.supplyV() / found.ohm();
    if (!(expectedA >= LEAST_A && expectedA <= MOST_A)) {
      throw new RunRefused(
          RunRefused.Kind.ARMING,
          Refusals.say(
              "cut.resistor",
              new Quantity(found.supplyV(), "V"),
              new Quantity(found.ohm(), "ohm"),
              Quantity.amps(expectedA),
              Quantity.amps(LEAST_A),
              Quantity.amps(MOST_A)));
    }
    double limitA = LIMIT_SHARE * expectedA;
    if (!talk.switchOn(Resistor.limits(calibration, limitA), parameters)) {
      throw notOn();
    }
    if (!talk.awaitTrip(TRIP_NANOS)) {
      talk.switchOff();
      throw new RunRefused(
          RunRefused.Kind.ARMING,
          Refusals.say("cut.failed", Quantity.amps(limitA), Quantity.amps(expectedA)));
    }
    Cut cut = judge(calibration, limitA);
    talk.clearTrip();
    return cut;
  }

  private Cut judge(Calibration calibration, double limitA) {
    Capture capture = talk.capture();
    double afterMs = (talk.trip().openedMicros() - talk.closedMicros()) / 1000.0;
    if (capture == null) {
      return new Cut(Double.NaN, limitA, afterMs, false, false);
    }
    Scaling scaling = new Scaling(calibration, talk.lookResult().zero());
    int highest = 0;
    for (int place = capture.missing(); place <= Capture.DECIDING; place++) {
      highest = Math.max(highest, capture.counts(place));
    }
    double tail = 0;
    for (int place = Capture.LENGTH - TAIL; place < Capture.LENGTH; place++) {
      tail += capture.counts(place) / (double) TAIL;
    }
    boolean gone = tail - talk.lookResult().zero().counts(Channel.I) < GONE_COUNTS;
    return new Cut(
        scaling.value(Channel.I, highest), limitA, afterMs, gone, gone && afterMs <= SLOWEST_MS);
  }

  private RunRefused notOn() {
    return new RunRefused(
        RunRefused.Kind.ARMING, Refusals.say("cut.not-on", talk.lookResult().result().id()));
  }
}
