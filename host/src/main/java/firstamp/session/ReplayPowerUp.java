package firstamp.session;

import firstamp.log.LogException;
import firstamp.log.PowerUpHeader;
import firstamp.log.PowerUpReader;
import firstamp.log.StreamSink;
import firstamp.model.ConversionBlock;
import firstamp.model.JobSheet;
import firstamp.model.ProbeEvent;
import firstamp.model.Reading;
import firstamp.model.SamplePlan;
import firstamp.model.Summary;
import java.util.Objects;
import java.util.function.Consumer;

/**
 * A logged power-up through the same chain as a live one: the same alarms at the same times, to the
 * bit.
 *
 * <p>Runs on the calling thread.
 */
public final class ReplayPowerUp {
  private final PowerUpReader reader;
  private final JobSheet sheet;
  private final ChainListener listener;
  private final Pace pace;
  private Consumer<Chain> follower = chain -> {};

  /** Keeps a replay in step with a clock, or lets it run. */
  @FunctionalInterface
  public interface Pace {
    /**
     * Called before each piece of the stream; may wait.
     *
     * @param micros probe time of its end
     * @return false to stop the replay
     */
    boolean reach(long micros);
  }

  /**
   * A replay that has not started.
   *
   * @param reader of the power-up
   * @param effective sheet with defaults filled in, the stored one or another
   * @param listener told what the chain finds
   * @param pace of it
   */
  public ReplayPowerUp(
      PowerUpReader reader, JobSheet effective, ChainListener listener, Pace pace) {
    this.reader = reader;
    this.sheet = Objects.requireNonNull(effective, "effective");
    this.listener = listener;
    this.pace = pace;
  }

  /** Who wants to know the chain, before the first piece of the stream. */
  void whenChainIsThere(Consumer<Chain> follower) {
    this.follower = follower;
  }

  /** Runs it to the end, or until the pace says stop. */
  public Summary run() throws LogException {
    PowerUpHeader header = reader.header();
    Chain chain =
        new Chain(
            sheet,
            header.hello(),
            header.stream() == PowerUpHeader.Stream.RAW,
            header.label(),
            listener);
    listener.probe(header.hello());
    follower.accept(chain);
    Feed feed = new Feed(chain);
    try {
      reader.replay(feed);
    } catch (Stopped stopped) {
      // Told to stop: the summary holds what was seen until then.
      feed.stopped = true;
    }
    Summary.LogPlace place = SummaryJson.logPlace(reader.entry().summaryJson());
    return Summaries.of(
        (int) reader.entry().number(),
        header.uuid(),
        chain,
        new Summary.ConversionCount(feed.received, feed.lost, feed.gaps),
        place != null ? place : new Summary.LogPlace(null, reader.bytes()),
        true);
  }

  /** Ends a replay from within. */
  private static final class Stopped extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Stopped() {
      super(null, null, false, false);
    }
  }

  /** Cuts long blocks so that the pace can hold between readings, and counts. */
  private final class Feed implements StreamSink {
    private final Chain chain;
    private long received;
    private long lost;
    private int gaps;
    private boolean stopped;

    Feed(Chain chain) {
      this.chain = chain;
    }

    @Override
    public void conversions(ConversionBlock block) {
      int done = 0;
      short[] counts = block.counts();
      while (done < counts.length) {
        long first = block.firstIndex() + done;
        int left =
            SamplePlan.CONVERSIONS_PER_READING
                - (int) Math.floorMod(first, (long) SamplePlan.CONVERSIONS_PER_READING);
        int take = Math.min(left, counts.length - done);
        reach(SamplePlan.microsOf(first + take));
        short[] piece =
            take == counts.length
                ? counts
                : java.util.Arrays.copyOfRange(counts, done, done + take);
        received += take;
        chain.accept(new ConversionBlock(first, piece));
        done += take;
      }
    }

    @Override
    public void reading(Reading reading) {
      reach(reading.endMicros());
      received += SamplePlan.CONVERSIONS_PER_READING;
      chain.accept(reading);
    }

    @Override
    public void event(ProbeEvent event) {
      if (event instanceof ProbeEvent.Gap gap) {
        lost += gap.conversions();
        gaps++;
      }
      chain.accept(event);
    }

    private void reach(long micros) {
      if (!pace.reach(micros)) {
        throw new Stopped();
      }
    }
  }
}
