package firstamp.pipeline;

import firstamp.model.JobSheet;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.model.samples.Reading;

/** Where the probe only watches: when the set was switched on by someone else. */
public final class ObservedSwitch {
  private static final double SHARE_OF_NOMINAL = 0.1;

  private boolean closed;

  /** The event to put into the stream, once; null = not now. */
  public ProbeEvent.SwitchChanged see(Chain chain, JobSheet sheet) {
    if (closed) {
      return null;
    }
    Reading reading = chain.latest();
    boolean over =
        Math.abs(chain.scaling().supplyV(reading)) > SHARE_OF_NOMINAL * sheet.supply().nominalV();
    for (JobSheet.Rail rail : sheet.rails()) {
      over |=
          rail.nominalV() != null
              && !reading.clipped(firstamp.model.samples.Channel.ofRail(rail.input()))
              && Math.abs(chain.scaling().railV(reading, rail.input()))
                  > SHARE_OF_NOMINAL * Math.abs(rail.nominalV());
    }
    if (!over) {
      return null;
    }
    closed = true;
    return new ProbeEvent.SwitchChanged(reading.startMicros(), SwitchState.ON, OffCause.USER);
  }
}
