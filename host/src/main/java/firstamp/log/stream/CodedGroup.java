package firstamp.log.stream;

import firstamp.log.code.CodedSeries;
import firstamp.log.code.MalformedChunkException;
import firstamp.model.samples.Channel;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * The chunks of one group of a raw power-up, as they came out of the file; decoded as far as asked
 * for. Not thread-safe, but decodes with two threads where there is much.
 */
public final class CodedGroup {
  private static final int HIGHEST = 1023;

  /** Conversions from which on a second thread pays. */
  private static final int MUCH = 16_000;

  /**
   * Units of decoding, most work first. A predicted channel comes before its companion: the
   * companion's values that it needs are then decoded already.
   */
  private static final Channel[][] UNITS = {
    {Channel.M, Channel.H},
    {Channel.J, Channel.I},
    {Channel.R1},
    {Channel.R2},
    {Channel.R3},
    {Channel.V}
  };

  private final long position;
  private final int length;
  private final Stretches stretches;
  private final CodedSeries[] series;

  /**
   * Nothing decoded yet.
   *
   * @param length conversions
   * @param series of each channel; null where there is none
   * @throws MalformedChunkException the channels' lengths are not those that the plan asks for
   */
  public CodedGroup(long position, int length, Stretches stretches, CodedSeries[] series)
      throws MalformedChunkException {
    this.position = position;
    this.length = length;
    this.stretches = stretches;
    this.series = series;
    int[] needed = stretches.valuesBefore(length, length);
    for (int channel = 0; channel < series.length; channel++) {
      int count = series[channel] == null ? 0 : series[channel].count();
      if (count != needed[channel]) {
        throw new MalformedChunkException(
            "channel " + Channel.of(channel) + " has " + count + " values, not " + needed[channel]);
      }
    }
  }

  public long position() {
    return position;
  }

  public int length() {
    return length;
  }

  Stretches stretches() {
    return stretches;
  }

  /**
   * Begins to decode the conversions from one offset to another, aside where there is much; they
   * are had from {@link Decoding#values}.
   */
  public Decoding decode(int from, int to) {
    Decoding decoding = new Decoding(from, to);
    if (to - from >= MUCH) {
      decoding.aside = ForkJoinPool.commonPool().submit(decoding::units);
    }
    return decoding;
  }

  /** Decoding under way: whoever has nothing else to do takes the next channels. */
  public final class Decoding {
    private final int from;
    private final int to;
    private final int[] begin;
    private final int[] end;
    private final int[][] values = new int[series.length][0];
    private final int[] origins = new int[series.length];
    private final AtomicInteger next = new AtomicInteger();
    private volatile MalformedChunkException failure;
    private ForkJoinTask<?> aside;

    private Decoding(int from, int to) {
      this.from = from;
      this.to = to;
      this.begin = stretches.valuesBefore(from, length);
      this.end = stretches.valuesBefore(to, length);
    }

    /** Helps to decode, waits for the rest and gives all. */
    public ChannelValues values() throws MalformedChunkException {
      units();
      if (aside != null) {
        aside.join();
      }
      if (failure != null) {
        throw failure;
      }
      return new ChannelValues(stretches, length, from, to, values, origins);
    }

    /** Takes no more channels and waits until those begun are through. */
    public void stop() {
      next.set(UNITS.length);
      if (aside != null) {
        aside.quietlyJoin();
      }
    }

    private void units() {
      try {
        for (int unit = next.getAndIncrement();
            unit < UNITS.length && failure == null;
            unit = next.getAndIncrement()) {
          for (Channel channel : UNITS[unit]) {
            decode(channel);
          }
        }
      } catch (MalformedChunkException e) {
        failure = e;
      }
    }

    private void decode(Channel channel) throws MalformedChunkException {
      int c = channel.ordinal();
      if (series[c] == null || begin[c] == end[c]) {
        return;
      }
      CodedSeries.Part part = series[c].part(begin[c], end[c]);
      int seen = 0;
      for (int value : part.values()) {
        seen |= value;
      }
      if ((seen & ~HIGHEST) != 0) {
        throw new MalformedChunkException("a conversion of " + channel + " is not 0 to " + HIGHEST);
      }
      values[c] = part.values();
      origins[c] = part.origin();
    }
  }
}
