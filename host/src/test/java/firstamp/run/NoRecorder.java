package firstamp.run;

import firstamp.model.Alarm;
import firstamp.model.ProbeEvent;
import firstamp.model.ProbeHello;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import firstamp.model.text.Worded;
import firstamp.pipeline.PlannedSettings;

/** Keeps nothing; a test keeps what it wants. */
public class NoRecorder implements Recorder {
  @Override
  public void begin(ProbeHello hello, PlannedSettings settings) {}

  @Override
  public void accept(ConversionBlock block) {}

  @Override
  public void accept(Reading reading) {}

  @Override
  public void accept(ProbeEvent event) {}

  @Override
  public void alarm(Alarm alarm) {}

  @Override
  public void awaitRoom() {}

  @Override
  public void clock(double slowPpm, long points, long probeMicros) {}

  @Override
  public Worded stateChange() {
    return null;
  }

  @Override
  public boolean logging() {
    return true;
  }
}
