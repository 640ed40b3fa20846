package firstamp.protocol.message;

/**
 * One method per message of the probe, so that a new one breaks every place that forgot it.
 *
 * @param <R> what each method gives
 */
public interface ProbeMessageVisitor<R> {
  R hello(ProbeMessage.Hello message);

  R raw(ProbeMessage.Raw message);

  R reading(ProbeMessage.Reading message);

  R lookResult(ProbeMessage.LookResult message);

  R trip(ProbeMessage.Trip message);

  R capture(ProbeMessage.Capture message);

  R status(ProbeMessage.Status message);

  R accepted(ProbeMessage.Accepted message);

  R refused(ProbeMessage.Refused message);

  R switchChanged(ProbeMessage.SwitchChanged message);

  R press(ProbeMessage.Press message);

  R calibration(ProbeMessage.Calibration message);
}
