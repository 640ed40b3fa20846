package firstamp.protocol.message;

/**
 * One method per message of the host, so that a new one breaks every place that forgot it.
 *
 * @param <R> what each method gives
 */
public interface HostMessageVisitor<R> {
  R helloRequest(HostMessage.HelloRequest message);

  R streamRequest(HostMessage.StreamRequest message);

  R setLimits(HostMessage.SetLimits message);

  R lookRequest(HostMessage.LookRequest message);

  R switchOn(HostMessage.SwitchOn message);

  R switchOff(HostMessage.SwitchOff message);

  R restore(HostMessage.Restore message);

  R heartbeat(HostMessage.Heartbeat message);

  R sendAgain(HostMessage.SendAgain message);

  R calibrationRead(HostMessage.CalibrationRead message);

  R calibrationWrite(HostMessage.CalibrationWrite message);

  R statusRequest(HostMessage.StatusRequest message);

  R selfTestRequest(HostMessage.SelfTestRequest message);

  R sound(HostMessage.Sound message);

  R clearTrip(HostMessage.ClearTrip message);

  R setPedal(HostMessage.SetPedal message);

  R readClips(HostMessage.ReadClips message);
}
