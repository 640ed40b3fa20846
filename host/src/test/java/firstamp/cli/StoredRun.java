package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.log.BenchLog;
import firstamp.log.stream.StreamSink;
import firstamp.model.ProbeEvent;
import firstamp.model.SwitchState;
import firstamp.model.TimeSource;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import firstamp.model.samples.SamplePlan;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** What a log holds of its last power-up, counted from the closing of the switch. */
final class StoredRun implements StreamSink {
  private static final int KEPT = 16_000 * 13 / 10;

  private final short[] kept = new short[KEPT];
  private final boolean[] known = new boolean[KEPT];
  private final List<ConversionBlock> blocks = new ArrayList<>();
  private long closedIndex = -1;
  private long closedMicros;
  long conversions;
  Long decidedFromClosing;

  static StoredRun of(Path file) throws Exception {
    StoredRun stored = new StoredRun();
    try (BenchLog log = BenchLog.openForReading(file, TimeSource.system())) {
      log.find("last").replay(stored);
    }
    for (ConversionBlock block : stored.blocks) {
      for (int k = 0; k < block.counts().length; k++) {
        long at = block.firstIndex() + k - stored.closedIndex;
        if (at >= 0 && at < KEPT) {
          stored.kept[(int) at] = block.counts()[k];
          stored.known[(int) at] = true;
        }
      }
    }
    return stored;
  }

  @Override
  public void conversions(ConversionBlock block) {
    conversions += block.counts().length;
    blocks.add(block);
  }

  @Override
  public void reading(Reading reading) {
    throw new AssertionError("raw stream expected");
  }

  @Override
  public void event(ProbeEvent event) {
    if (event instanceof ProbeEvent.SwitchChanged changed && changed.state() == SwitchState.ON) {
      closedMicros = changed.micros();
      closedIndex = SamplePlan.indexAt(closedMicros);
    }
    if (event instanceof ProbeEvent.Tripped tripped) {
      decidedFromClosing = tripped.trip().decidedMicros() - closedMicros;
    }
  }

  /**
   * Every conversion up to the trip, but where the value runs away by more than a count in 10 us.
   */
  void sameWithinOneCount(StoredRun other) {
    int end = decidedFromClosing == null ? KEPT : (int) (decidedFromClosing * 2 / 125);
    int compared = 0;
    for (int at = 64; at < end; at++) {
      if (!known[at] || !other.known[at]) {
        continue;
      }
      compared++;
      int difference = Math.abs(kept[at] - other.kept[at]);
      if (difference > 1 && !steep(at)) {
        throw new AssertionError(
            "conversion "
                + at
                + " after closing: "
                + kept[at]
                + " emulated, "
                + other.kept[at]
                + " on the chip");
      }
    }
    assertThat(compared).isGreaterThan(Math.min(15_000, (end - 64) * 9 / 10));
  }

  /** Neighbours of the same slot, 2 ms apart or less, that differ by over 6 counts. */
  private boolean steep(int at) {
    int step = at % 4 == 3 ? 32 : 4;
    return at + step < KEPT && Math.abs(kept[at] - kept[at + step]) > 6
        || at >= step && Math.abs(kept[at] - kept[at - step]) > 6;
  }
}
