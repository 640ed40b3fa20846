package firstamp.protocol.frame;

import static firstamp.protocol.frame.WireText.calibration;
import static firstamp.protocol.frame.WireText.list;

import firstamp.protocol.message.HostMessage;
import firstamp.protocol.message.HostMessageVisitor;
import firstamp.protocol.values.LookParameters;
import firstamp.protocol.values.RailWindow;
import firstamp.protocol.values.TripLimits;

/** Spells a decoded command of the host as the keys of a vector. */
final class HostWireText implements HostMessageVisitor<String> {
  @Override
  public String helloRequest(HostMessage.HelloRequest m) {
    return " speed=" + m.speed().code();
  }

  @Override
  public String streamRequest(HostMessage.StreamRequest m) {
    return " kind=" + m.kind().code();
  }

  @Override
  public String setLimits(HostMessage.SetLimits m) {
    TripLimits l = m.limits();
    return " inrush_ms=%d inrush_i=%d running_i=%d running_j=%d peak_i=%d mean_i=%d mean_j=%d"
            .formatted(
                l.inrushMillis(),
                l.inrushICounts(),
                l.runningICounts(),
                l.runningJCounts(),
                l.peakICounts(),
                l.meanISixteenths(),
                l.meanJSixteenths())
        + " confirm_i=%d confirm_j=%d confirm_rail=%d confirm_v=%d i2t_budget=%d i2t_running=%d"
            .formatted(
                l.confirmI(),
                l.confirmJ(),
                l.confirmRail(),
                l.confirmV(),
                l.i2tBudgetCounts2(),
                l.i2tRunningICounts())
        + " rail_low=%s rail_high=%s over_v=%d silence_ms=%d look_over_j=%d start_i=%d start_ms=%d"
            .formatted(
                list(l.rails(), RailWindow::lowCounts),
                list(l.rails(), RailWindow::highCounts),
                l.overVCounts(),
                l.silenceMillis(),
                l.lookOverJCounts(),
                l.startICounts(),
                l.startMillis());
  }

  private static String look(LookParameters look) {
    return " skip=%d max_ms=%d v_per_j=%d short_v_per_j=%d low_v_per_j=%d supply_lowest=%d supply_highest=%d charge_limit=%d"
        .formatted(
            look.skip() ? 1 : 0,
            look.longestMillis(),
            look.vPerJ256ths(),
            look.shortVPerJ256ths(),
            look.lowVPerJ256ths(),
            look.supplyLowestCounts(),
            look.supplyHighestCounts(),
            look.chargeLimit());
  }

  @Override
  public String lookRequest(HostMessage.LookRequest m) {
    return look(m.look());
  }

  @Override
  public String switchOn(HostMessage.SwitchOn m) {
    return look(m.look());
  }

  @Override
  public String switchOff(HostMessage.SwitchOff m) {
    return " by=" + m.by().code();
  }

  @Override
  public String restore(HostMessage.Restore m) {
    return " number=" + m.tripNumber() + look(m.look());
  }

  @Override
  public String heartbeat(HostMessage.Heartbeat m) {
    return "";
  }

  @Override
  public String sendAgain(HostMessage.SendAgain m) {
    return " what=%d number=%d".formatted(m.what().code(), m.tripNumber());
  }

  @Override
  public String calibrationRead(HostMessage.CalibrationRead m) {
    return "";
  }

  @Override
  public String calibrationWrite(HostMessage.CalibrationWrite m) {
    return calibration(m.data());
  }

  @Override
  public String statusRequest(HostMessage.StatusRequest m) {
    return "";
  }

  @Override
  public String selfTestRequest(HostMessage.SelfTestRequest m) {
    return "";
  }

  @Override
  public String sound(HostMessage.Sound m) {
    return " pattern=" + m.pattern().code();
  }

  @Override
  public String clearTrip(HostMessage.ClearTrip m) {
    return " number=" + m.tripNumber();
  }

  @Override
  public String setPedal(HostMessage.SetPedal m) {
    return " duty=" + m.duty().code();
  }

  @Override
  public String readClips(HostMessage.ReadClips m) {
    return "";
  }
}
