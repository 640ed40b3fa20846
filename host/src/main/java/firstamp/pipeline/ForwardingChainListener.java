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

/** Passes everything on; a subclass adds to it. */
public class ForwardingChainListener implements ChainListener {
  private final ChainListener next;

  /** Passes on to another one. */
  public ForwardingChainListener(ChainListener next) {
    this.next = next;
  }

  @Override
  public void probe(ProbeHello hello) {
    next.probe(hello);
  }

  @Override
  public void look(Summary.LookFigures figures) {
    next.look(figures);
  }

  @Override
  public void alarm(Alarm alarm) {
    next.alarm(alarm);
  }

  @Override
  public void demandsOff(String rule) {
    next.demandsOff(rule);
  }

  @Override
  public void trip(TripFigures figures) {
    next.trip(figures);
  }

  @Override
  public void on() {
    next.on();
  }

  @Override
  public void off(OffCause by, double atMs) {
    next.off(by, atMs);
  }

  @Override
  public void openingSeen(double atMs) {
    next.openingSeen(atMs);
  }

  @Override
  public void mark(String text, double atMs) {
    next.mark(text, atMs);
  }

  @Override
  public void happened(Happening what, double atMs) {
    next.happened(what, atMs);
  }

  @Override
  public void noted(int mark, String text) {
    next.noted(mark, text);
  }

  @Override
  public void limitChanged(ProbeEvent.LimitChanged event) {
    next.limitChanged(event);
  }

  @Override
  public void seenAfterTheEnd() {
    next.seenAfterTheEnd();
  }

  @Override
  public void told(ProbeEvent.Told event, double atMs) {
    next.told(event, atMs);
  }

  @Override
  public void link(ProbeEvent.LinkState state, String text, double atMs) {
    next.link(state, text, atMs);
  }

  @Override
  public void log(ProbeEvent.LogChanged event, double atMs) {
    next.log(event, atMs);
  }

  @Override
  public void press(ProbeEvent.Press press, double atMs) {
    next.press(press, atMs);
  }

  @Override
  public void reading(Reading reading, double atMs) {
    next.reading(reading, atMs);
  }

  @Override
  public boolean wantsFigures() {
    return next.wantsFigures();
  }

  @Override
  public void figures(ReadingFigures figures) {
    next.figures(figures);
  }

  @Override
  public void levels(LevelWindow window) {
    next.levels(window);
  }

  @Override
  public void ripple(RippleWindow window) {
    next.ripple(window);
  }
}
