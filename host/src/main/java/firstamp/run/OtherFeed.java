package firstamp.run;

import firstamp.model.JobSheet;
import firstamp.model.samples.Reading;
import firstamp.model.text.Worded;
import firstamp.model.text.Wording.Phrase;
import firstamp.model.text.Wording.Quantity;
import firstamp.pipeline.ReadingFigures;
import firstamp.pipeline.RunRefused;
import firstamp.run.talk.Refusals;
import java.util.Set;

/**
 * Volts on the set while the switch is open: a battery or another feed is in, or a capacitor is
 * still charged. Nothing is closed onto that.
 *
 * <p>Not thread-safe: belongs to the session thread.
 */
final class OtherFeed {
  /** Under this nothing feeds. */
  static final double MOST_V = 1;

  /** A charge may go down by itself so long. */
  static final long PATIENCE_MICROS = 30_000_000;

  private final RunStream stream;
  private long sinceMicros = -1;
  private Worded said;

  OtherFeed(RunStream stream) {
    this.stream = stream;
  }

  /**
   * Whether it must be waited for.
   *
   * @param openRails inputs whose clip is joined to nothing
   * @throws RunRefused it does not go away
   */
  boolean waits(Set<Integer> openRails) throws RunRefused {
    Found found = highest(openRails);
    if (found == null) {
      sinceMicros = -1;
      if (said != null) {
        said = null;
        stream.progress().waiting(null);
      }
      return false;
    }
    long now = stream.translator().lastMicros();
    sinceMicros = sinceMicros < 0 ? now : sinceMicros;
    Quantity volts = new Quantity(Math.round(10 * found.volts()) / 10.0, "V");
    if (now - sinceMicros >= PATIENCE_MICROS) {
      throw new RunRefused(RunRefused.Kind.ARMING, Refusals.otherFeed(volts, found.where()));
    }
    Worded text = Refusals.otherFeedWaits(volts, found.where());
    if (!text.equals(said)) {
      said = text;
      stream.progress().waiting(text);
    }
    return true;
  }

  private record Found(double volts, Object where) {}

  private Found highest(Set<Integer> openRails) {
    Reading latest = stream.chain().latest();
    if (latest == null) {
      return null;
    }
    Found most = take(null, stream.chain().scaling().supplyV(latest), new Phrase("supply-leads"));
    for (JobSheet.Rail rail : stream.setup().effective().rails()) {
      if (!openRails.contains(rail.input()) && ReadingFigures.clipOn(latest, rail.input())) {
        most = take(most, stream.chain().scaling().railV(latest, rail.input()), rail.name());
      }
    }
    return most;
  }

  private static Found take(Found most, double volts, Object where) {
    boolean more = Math.abs(volts) > MOST_V && (most == null || Math.abs(volts) > most.volts());
    return more ? new Found(Math.abs(volts), where) : most;
  }
}
