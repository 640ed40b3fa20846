package firstamp.bench;

import firstamp.model.Alarm;
import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.ProbeHello;
import firstamp.model.RuleId;
import firstamp.model.Summary;
import firstamp.model.samples.LevelWindow;
import firstamp.model.samples.Reading;
import firstamp.model.samples.Scaling;
import firstamp.pipeline.ForwardingChainListener;
import firstamp.run.questions.ArmGate;
import java.util.function.Supplier;

/** Tells the snapshots and whoever else listens what the chain of a live power-up says. */
final class BenchListener extends ForwardingChainListener {
  private final SnapshotBuilder builder;
  private final ArmGate gate;
  private final IdleWatch idleWatch;
  private final JobSheet sheet;
  private final Supplier<Scaling> scaling;
  private volatile LookScale lookScale;

  /**
   * A listener.
   *
   * @param setting of the bench
   * @param builder of the snapshots
   * @param scaling of the probe that is heard
   * @param lookScale until the probe has said its own, null = none
   */
  BenchListener(
      LiveSetting setting,
      SnapshotBuilder builder,
      Supplier<Scaling> scaling,
      LookScale lookScale) {
    super(setting.alsoTold());
    this.builder = builder;
    this.gate = setting.gate();
    this.idleWatch = setting.idleWatch();
    this.sheet = setting.setup().effective();
    this.scaling = scaling;
    this.lookScale = lookScale;
  }

  /** What the first look is measured with; null before the probe has said so. */
  LookScale lookScale() {
    return lookScale;
  }

  @Override
  public void probe(ProbeHello hello) {
    lookScale = LookScale.of(hello);
    super.probe(hello);
  }

  @Override
  public void look(Summary.LookFigures figures) {
    LookScale scale = lookScale;
    lookScale = scale == null ? null : scale.after(sheet, figures);
    builder.look(figures);
    super.look(figures);
  }

  @Override
  public void alarm(Alarm alarm) {
    if (alarm.rule().equals(RuleId.CLIP_OFF.id())) {
      // A clip that goes or comes was moved by somebody.
      idleWatch.touched();
      gate.hookUpChanged();
    }
    builder.alarm(alarm);
    super.alarm(alarm);
  }

  @Override
  public void off(OffCause by, double atMs) {
    builder.off(by, atMs);
    super.off(by, atMs);
  }

  @Override
  public void mark(String text, double atMs) {
    builder.mark(text, atMs);
    super.mark(text, atMs);
  }

  @Override
  public void happened(Happening what, double atMs) {
    builder.happened(what, atMs);
    super.happened(what, atMs);
  }

  @Override
  public void told(ProbeEvent.Told event, double atMs) {
    builder.told(event, atMs);
    super.told(event, atMs);
  }

  @Override
  public void press(ProbeEvent.Press press, double atMs) {
    idleWatch.touched();
    super.press(press, atMs);
  }

  @Override
  public void noted(int mark, String text) {
    builder.noted(mark, text);
    super.noted(mark, text);
  }

  @Override
  public void limitChanged(ProbeEvent.LimitChanged event) {
    builder.limitChanged(event);
    super.limitChanged(event);
  }

  @Override
  public void seenAfterTheEnd() {
    builder.seenAfterTheEnd();
    super.seenAfterTheEnd();
  }

  @Override
  public void link(ProbeEvent.LinkState state, String text, double atMs) {
    gate.hookUpChanged();
    builder.link(state, text, atMs);
    super.link(state, text, atMs);
  }

  @Override
  public void log(ProbeEvent.LogChanged event, double atMs) {
    builder.log(event, atMs);
    super.log(event, atMs);
  }

  @Override
  public void reading(Reading reading, double atMs) {
    builder.add(reading, scaling.get());
    super.reading(reading, atMs);
  }

  @Override
  public void levels(LevelWindow window) {
    builder.levels(window);
    super.levels(window);
  }
}
