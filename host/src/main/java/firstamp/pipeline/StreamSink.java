package firstamp.pipeline;

import firstamp.model.ProbeEvent;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;

/** Takes the stream of one power-up, in order: conversions or reduced readings, and events. */
public interface StreamSink {
  /** Consecutive conversions. */
  void accept(ConversionBlock block);

  /** A reading that the probe reduced. */
  void accept(Reading reading);

  /** An event. */
  void accept(ProbeEvent event);
}
