package firstamp.log.stream;

import firstamp.model.ProbeEvent;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;

/** Takes the stream of a power-up in its original order. */
public interface StreamSink {
  /** Conversions of a raw stream; blocks are cut wherever an event stands between two of them. */
  void conversions(ConversionBlock block);

  /** A reading of a reduced stream. */
  void reading(Reading reading);

  /** An event. */
  void event(ProbeEvent event);
}
