package firstamp.study;

import firstamp.log.stream.StreamSink;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import java.util.Arrays;

/**
 * Passes a logged stream on up to where the switch would have opened, then the trip in the place of
 * what came then, and the end. Not thread-safe.
 */
final class StreamCut implements StreamSink {
  private final ProbeWhatIf.Cut cut;
  private final StreamSink next;

  /**
   * Nothing passed on yet.
   *
   * @param cut null = all of the record goes on
   */
  StreamCut(ProbeWhatIf.Cut cut, StreamSink next) {
    this.cut = cut;
    this.next = next;
  }

  @Override
  public void conversions(ConversionBlock block) {
    if (cut == null || block.endIndex() < cut.endIndex()) {
      next.conversions(block);
      return;
    }
    int left = (int) (cut.endIndex() - block.firstIndex());
    if (left > 0) {
      next.conversions(
          new ConversionBlock(block.firstIndex(), Arrays.copyOf(block.counts(), left)));
    }
    end();
  }

  @Override
  public void reading(Reading reading) {
    next.reading(reading);
  }

  @Override
  public void event(ProbeEvent event) {
    if (event instanceof ProbeEvent.LimitChanged) {
      return;
    }
    if (cut == null || event.micros() < cut.micros()) {
      next.event(event);
    } else if (event instanceof ProbeEvent.RunEnded) {
      end();
    }
  }

  private void end() {
    if (cut.trip() != null) {
      long opened = cut.micros();
      next.event(new ProbeEvent.SwitchChanged(opened, SwitchState.TRIPPED, OffCause.TRIP));
      next.event(new ProbeEvent.Tripped(opened, cut.trip()));
    }
    String ended = cut.trip() == null ? "input-end" : "trip";
    next.event(new ProbeEvent.RunEnded(cut.micros(), ended));
    throw new ReplayPowerUp.Stopped();
  }
}
