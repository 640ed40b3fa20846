package firstamp.study;

import firstamp.account.FigureList;
import firstamp.log.LogException;
import firstamp.log.PowerUpHeader;
import firstamp.log.PowerUpReader;
import firstamp.log.stream.StreamSink;
import firstamp.model.JobSheet;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.Summary;
import firstamp.model.SwitchState;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import firstamp.model.samples.SamplePlan;
import firstamp.pipeline.Chain;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.ForwardingChainListener;
import firstamp.pipeline.ProbeSettings;
import firstamp.pipeline.RunRefused;
import firstamp.pipeline.Summaries;
import firstamp.pipeline.SummaryJson;
import firstamp.protocol.values.TripLimits;
import firstamp.sheet.Defaults;
import java.util.Objects;
import java.util.Set;
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
  private final TripLimits others;
  private Consumer<Chain> follower = chain -> {};
  private FigureList figures;

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
    this(reader, effective, listener, pace, null);
  }

  private ReplayPowerUp(
      PowerUpReader reader,
      JobSheet effective,
      ChainListener listener,
      Pace pace,
      TripLimits others) {
    this.reader = reader;
    this.sheet = Objects.requireNonNull(effective, "effective");
    this.listener = listener;
    this.pace = pace;
    this.others = others;
  }

  /**
   * What would have happened with another sheet: the replay ends where the probe, by the sheet's
   * limits, or the host, by its rules, would have switched off. The probe's part needs the raw
   * stream.
   *
   * @param other sheet with its defaults filled in
   * @throws RunRefused the probe of the record cannot watch the sheet's limits
   */
  public static ReplayPowerUp whatIf(
      PowerUpReader reader, JobSheet other, ChainListener listener, Pace pace)
      throws LogException, RunRefused {
    TripLimits limits =
        new ProbeSettings(Defaults.fill(other)).plan(reader.header().hello(), Set.of()).limits();
    return new ReplayPowerUp(reader, other, listener, pace, limits);
  }

  /** Who wants to know the chain, before the first piece of the stream. */
  void whenChainIsThere(Consumer<Chain> follower) {
    this.follower = follower;
  }

  /** Runs it to the end, or until the pace says stop. */
  public Summary run() throws LogException {
    PowerUpHeader header = reader.header();
    RuleOff ruleOff = new RuleOff(listener);
    Chain chain =
        new Chain(
            sheet,
            header.hello(),
            header.stream() == PowerUpHeader.Stream.RAW,
            header.label(),
            others != null ? ruleOff : listener);
    for (ProbeEvent event : reader.events()) {
      if (event instanceof ProbeEvent.SwitchChanged changed && changed.state() == SwitchState.ON) {
        chain.closesAt(changed.micros());
        break;
      }
    }
    listener.probe(header.hello());
    follower.accept(chain);
    Feed feed = new Feed(chain, ruleOff);
    try {
      reader.replay(sink(header, feed));
    } catch (Stopped stopped) {
      // Told to stop, or the switch would have opened: the summary holds what was seen until then.
    }
    figures = FigureList.of(chain.figures().evidence());
    Summary.LogPlace place = SummaryJson.logPlace(reader.entry().summaryJson());
    return Summaries.of(
        (int) reader.entry().number(),
        header.uuid(),
        chain,
        new Summary.ConversionCount(feed.received, feed.lost, feed.gaps),
        place != null ? place : new Summary.LogPlace(null, reader.bytes()),
        true);
  }

  /** All figures of a replay that has run. */
  public FigureList figures() {
    return figures;
  }

  private StreamSink sink(PowerUpHeader header, Feed feed) throws LogException {
    return others != null && header.stream() == PowerUpHeader.Stream.RAW
        ? new StreamCut(ProbeWhatIf.find(reader, others), feed)
        : feed;
  }

  /** Hears when a rule of the host demands off. */
  private static final class RuleOff extends ForwardingChainListener {
    private boolean demanded;

    RuleOff(ChainListener next) {
      super(next);
    }

    @Override
    public void demandsOff(String rule) {
      demanded = true;
      super.demandsOff(rule);
    }
  }

  /** Ends a replay from within. */
  static final class Stopped extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Stopped() {
      super(null, null, false, false);
    }
  }

  /** Cuts long blocks so that the pace can hold between readings, and counts. */
  private final class Feed implements StreamSink {
    private final Chain chain;
    private final RuleOff ruleOff;
    private long received;
    private long lost;
    private int gaps;

    Feed(Chain chain, RuleOff ruleOff) {
      this.chain = chain;
      this.ruleOff = ruleOff;
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
        endWhereARuleSwitchesOff(SamplePlan.microsOf(first + take));
        done += take;
      }
    }

    @Override
    public void reading(Reading reading) {
      reach(reading.endMicros());
      received += SamplePlan.CONVERSIONS_PER_READING;
      chain.accept(reading);
      endWhereARuleSwitchesOff(reading.endMicros());
    }

    @Override
    public void event(ProbeEvent event) {
      if (event instanceof ProbeEvent.Gap gap) {
        lost += gap.conversions();
        gaps++;
      }
      chain.accept(event);
    }

    private void endWhereARuleSwitchesOff(long micros) {
      if (ruleOff.demanded && chain.state() == SwitchState.ON) {
        chain.accept(new ProbeEvent.SwitchChanged(micros, SwitchState.OFF, OffCause.RULE));
        chain.accept(new ProbeEvent.RunEnded(micros, "rule-off"));
        throw new Stopped();
      }
    }

    private void reach(long micros) {
      if (!pace.reach(micros)) {
        throw new Stopped();
      }
    }
  }
}
