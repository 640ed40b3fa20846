package firstamp.window.pages;

import firstamp.model.Difference;
import firstamp.model.JobSheet;
import firstamp.model.ProbeEvent;
import firstamp.run.TripsInARow;

/**
 * What is asked before a set that switched itself off is switched on again: what is different, and
 * where that is nothing, or it was the same cause before, ohms or half the volts. Knows no display.
 */
final class AgainFlow {
  private final JobSheet sheet;
  private final int trip;
  private final TripsInARow trips;
  private Stage stage = Stage.DIFFERENT;
  private Difference difference;
  private Double forbids;

  /** Where it stands. */
  enum Stage {
    /** What is different now? */
    DIFFERENT,
    /** Ohms, or half the volts? */
    PROOF,
    /** Which ohms? */
    OHM
  }

  /**
   * A flow that begins.
   *
   * @param sheet of the set
   * @param trip number to be given back to the probe box
   * @param trips in a row, of this set
   */
  AgainFlow(JobSheet sheet, int trip, TripsInARow trips) {
    this.sheet = sheet;
    this.trip = trip;
    this.trips = trips;
  }

  Stage stage() {
    return stage;
  }

  TripsInARow trips() {
    return trips;
  }

  Difference difference() {
    return difference;
  }

  /** Current that the ohms typed last would draw, where that forbids; null = it does not. */
  Double forbids() {
    return forbids;
  }

  /** Volts to which the supply is turned down; null = its volts are not known. */
  Double halfV() {
    Double nominal = sheet.supply().nominalV();
    return nominal == null ? null : (Double) (nominal / 2);
  }

  /** An answer to what is different; gives what goes on, or null where more is asked. */
  ProbeEvent.SwitchedOnAgain different(Difference answer) {
    difference = answer;
    if (!trips.wantsProof(answer)) {
      return event(0, null, null);
    }
    stage = Stage.PROOF;
    return null;
  }

  /** Ohms will be typed. */
  void ohms() {
    stage = Stage.OHM;
  }

  /** The supply has been turned down. */
  ProbeEvent.SwitchedOnAgain half() {
    return event(0, null, halfV());
  }

  /** A resistance to the chassis; null where it forbids. */
  ProbeEvent.SwitchedOnAgain ohm(int rail, double ohm) {
    forbids = TripsInARow.forbids(sheet, rail, ohm);
    return forbids == null ? event(rail, ohm, null) : null;
  }

  /** One stage back; false at the first one. */
  boolean back() {
    forbids = null;
    boolean there = stage != Stage.DIFFERENT;
    stage = stage == Stage.OHM ? Stage.PROOF : Stage.DIFFERENT;
    return there;
  }

  private ProbeEvent.SwitchedOnAgain event(int rail, Double ohm, Double halfV) {
    return new ProbeEvent.SwitchedOnAgain(0, trip, difference, rail, ohm, halfV);
  }
}
