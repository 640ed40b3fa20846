package firstamp.run;

import firstamp.model.Alarm;
import firstamp.model.OffCause;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ForwardingChainListener;
import firstamp.pipeline.ReadingFigures;
import firstamp.pipeline.TripFigures;
import firstamp.sound.AlarmSound;
import java.util.Objects;

/** Lets a power-up be heard; passes everything on. */
public final class SoundingListener extends ForwardingChainListener {
  private final AlarmSound sound;

  /**
   * Between the chain and whoever else listens.
   *
   * @param next hears the same
   * @param sound of the bench
   */
  public SoundingListener(ChainListener next, AlarmSound sound) {
    super(next);
    this.sound = Objects.requireNonNull(sound, "sound");
  }

  @Override
  public void alarm(Alarm alarm) {
    sound.alarm(alarm);
    super.alarm(alarm);
  }

  @Override
  public void trip(TripFigures figures) {
    sound.switchedOff();
    super.trip(figures);
  }

  @Override
  public void off(OffCause by, double atMs) {
    sound.currentOff();
    if (by == OffCause.RULE) {
      sound.switchedOff();
    } else if (by != OffCause.TRIP) {
      // What tripped was heard with the trip.
      sound.offAsWanted();
    }
    super.off(by, atMs);
  }

  @Override
  public boolean wantsFigures() {
    return true;
  }

  @Override
  public void figures(ReadingFigures figures) {
    sound.current(figures.supplyA(), figures.atMs());
    // The next one gets them only if it asked for them by itself.
    if (super.wantsFigures()) {
      super.figures(figures);
    }
  }
}
