package firstamp.run;

import firstamp.model.Alarm;
import firstamp.model.ProbeEvent;
import firstamp.pipeline.ChainListener;
import java.util.ArrayList;
import java.util.List;

/** Remembers what was said. */
final class HeardAlarms implements ChainListener {
  final List<ProbeEvent.LinkState> links = new ArrayList<>();
  final List<String> rules = new ArrayList<>();
  final List<String> states = new ArrayList<>();
  Runnable onAlarm = () -> {};

  @Override
  public void alarm(Alarm alarm) {
    rules.add(alarm.rule());
    states.add(alarm.state().id());
    Runnable once = onAlarm;
    onAlarm = () -> {};
    once.run();
  }

  @Override
  public void link(ProbeEvent.LinkState state, String text, double atMs) {
    links.add(state);
  }
}
