package firstamp.run;

import firstamp.model.Alarm;
import firstamp.model.ProbeEvent;
import firstamp.model.ProbeHello;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import firstamp.model.text.Worded;
import firstamp.pipeline.PlannedSettings;
import java.util.ArrayList;
import java.util.List;

/** Keeps what a log would keep. */
final class CountingRecorder implements Recorder {
  final List<ProbeEvent> events = new ArrayList<>();
  long conversions;
  long gapConversions;
  int outOfOrder;
  private long nextIndex = -1;
  long failFromConversion = Long.MAX_VALUE;
  private boolean said;

  @Override
  public void begin(ProbeHello hello, PlannedSettings settings) {}

  @Override
  public void accept(ConversionBlock block) {
    conversions += block.counts().length;
    outOfOrder += block.firstIndex() < nextIndex ? 1 : 0;
    nextIndex = block.endIndex();
  }

  @Override
  public void accept(Reading reading) {}

  @Override
  public void accept(ProbeEvent event) {
    events.add(event);
    if (event instanceof ProbeEvent.Gap gap) {
      gapConversions += gap.conversions();
    }
  }

  @Override
  public void alarm(Alarm alarm) {}

  @Override
  public void awaitRoom() {}

  @Override
  public void clock(double slowPpm, long points, long probeMicros) {}

  @Override
  public Worded stateChange() {
    if (!said && conversions > failFromConversion) {
      said = true;
      return Worded.asIs("the disk is full");
    }
    return null;
  }

  @Override
  public boolean logging() {
    return !said;
  }
}
