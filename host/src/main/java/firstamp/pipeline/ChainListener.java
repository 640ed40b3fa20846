package firstamp.pipeline;

import firstamp.model.Alarm;
import firstamp.model.Happening;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.ProbeHello;
import firstamp.model.Summary;
import firstamp.model.samples.LevelWindow;
import firstamp.model.samples.Reading;
import firstamp.model.samples.RippleWindow;

/**
 * What the chain finds, in the order of the stream; called on the thread that feeds it. Times are
 * ms from closing.
 */
public interface ChainListener {
  /** Who answered; before anything else. */
  default void probe(ProbeHello hello) {}

  /** The first look is over. */
  default void look(Summary.LookFigures figures) {}

  /** An alarm was raised or changed its state. */
  default void alarm(Alarm alarm) {}

  /** A rule demands that the switch opens. */
  default void demandsOff(String rule) {}

  /** The probe tripped. */
  default void trip(TripFigures figures) {}

  /** The switch closed. */
  default void on() {}

  /** The switch opened, or the look ended without closing it. */
  default void off(OffCause by, double atMs) {}

  /** The opening of the switch is seen: the volts on the set fall. */
  default void openingSeen(double atMs) {}

  /** A mark. */
  default void mark(String text, double atMs) {}

  /** A clip was moved, a mode or a step began, something was changed. */
  default void happened(Happening what, double atMs) {}

  /** Words for a mark; 1 = the first one. */
  default void noted(int mark, String text) {}

  /** The probe has taken another limit. */
  default void limitChanged(ProbeEvent.LimitChanged event) {}

  /** The person has seen what stood when the power-up was over already. */
  default void seenAfterTheEnd() {}

  /** What the person has told about the power-up. */
  default void told(ProbeEvent.Told event, double atMs) {}

  /** The cable changed. */
  default void link(ProbeEvent.LinkState state, String text, double atMs) {}

  /** The log changed. */
  default void log(ProbeEvent.LogChanged event, double atMs) {}

  /** Button or pedal. */
  default void press(ProbeEvent.Press press, double atMs) {}

  /** A reading. */
  default void reading(Reading reading, double atMs) {}

  /** Whether {@link #figures} is of interest. */
  default boolean wantsFigures() {
    return false;
  }

  /** The same reading in physical units. */
  default void figures(ReadingFigures figures) {}

  /** A window of levels. */
  default void levels(LevelWindow window) {}

  /** A window of ripple. */
  default void ripple(RippleWindow window) {}
}
