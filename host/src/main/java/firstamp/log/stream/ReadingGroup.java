package firstamp.log.stream;

import firstamp.log.code.EncoderWorkspace;
import firstamp.log.code.MalformedChunkException;
import firstamp.log.code.SeriesCoder;
import firstamp.model.samples.Channel;
import firstamp.model.samples.Reading;
import firstamp.model.samples.SamplePlan;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;

/**
 * Readings of a reduced stream. Four series per channel: sum, lowest, highest above lowest, and the
 * sum of squares above its least possible value for that sum.
 */
public final class ReadingGroup implements StreamGroup {
  /** Version of a chunk of readings: four series, each with version (1 byte) and length (4). */
  public static final int CHUNK_VERSION = 16;

  private static final int SERIES = 4;
  private static final int TAIL_BYTES = 80;
  private static final Channel[] CHANNELS = Channel.values();

  private final Stretches stretches = new Stretches();
  private final List<Reading> readings = new ArrayList<>();

  public void add(Reading reading) {
    readings.add(reading);
  }

  public Reading get(int k) {
    return readings.get(k);
  }

  @Override
  public int length() {
    return readings.size();
  }

  @Override
  public Stretches stretches() {
    return stretches;
  }

  @Override
  public void truncate(int length) {
    readings.subList(length, readings.size()).clear();
    stretches.truncate(length);
  }

  @Override
  public byte[] packed(int from) {
    ByteBuffer out =
        ByteBuffer.allocate((readings.size() - from) * TAIL_BYTES).order(ByteOrder.LITTLE_ENDIAN);
    for (Reading reading : readings.subList(from, readings.size())) {
      for (Channel channel : CHANNELS) {
        out.putShort((short) reading.sum(channel));
        out.putShort((short) reading.lowest(channel));
        out.putShort((short) reading.highest(channel));
        out.putInt((int) reading.sumOfSquares(channel));
      }
    }
    return out.array();
  }

  public static List<Reading> unpack(byte[] data, int count, Stretches stretches)
      throws MalformedChunkException {
    if (count < 0 || count > SeriesCoder.LONGEST || data.length != (long) count * TAIL_BYTES) {
      throw new MalformedChunkException(data.length + " bytes for " + count + " readings");
    }
    ByteBuffer in = ByteBuffer.wrap(data).order(ByteOrder.LITTLE_ENDIAN);
    int[][] values = new int[CHANNELS.length * SERIES][count];
    for (int k = 0; k < count; k++) {
      for (int channel = 0; channel < CHANNELS.length; channel++) {
        values[channel * SERIES][k] = in.getShort() & 0xffff;
        values[channel * SERIES + 1][k] = in.getShort() & 0xffff;
        values[channel * SERIES + 2][k] = in.getShort() & 0xffff;
        values[channel * SERIES + 3][k] = in.getInt();
      }
    }
    return readings(values, stretches, count);
  }

  @Override
  public Parts parts(EncoderWorkspace room) {
    return new Parts(chunks(false), Spans.of(readings));
  }

  @Override
  public List<ChunkRow> repacked(EncoderWorkspace room) {
    return chunks(true);
  }

  private List<ChunkRow> chunks(boolean repack) {
    List<ChunkRow> rows = new ArrayList<>();
    int count = readings.size();
    for (Channel channel : CHANNELS) {
      int[][] series = new int[SERIES][count];
      for (int k = 0; k < count; k++) {
        Reading reading = readings.get(k);
        series[0][k] = reading.sum(channel);
        series[1][k] = reading.lowest(channel);
        series[2][k] = reading.highest(channel) - reading.lowest(channel);
        series[3][k] =
            (int) (reading.sumOfSquares(channel) - leastSquares(reading.sum(channel), channel));
      }
      SeriesCoder.Coded[] coded = new SeriesCoder.Coded[SERIES];
      int bytes = 0;
      for (int s = 0; s < SERIES; s++) {
        coded[s] =
            repack ? SeriesCoder.smallest(series[s], count) : SeriesCoder.encode(series[s], count);
        bytes += 5 + coded[s].data().length;
      }
      ByteBuffer out = ByteBuffer.allocate(bytes).order(ByteOrder.LITTLE_ENDIAN);
      for (SeriesCoder.Coded part : coded) {
        out.put((byte) part.version()).putInt(part.data().length).put(part.data());
      }
      rows.add(
          new ChunkRow(
              channel.ordinal(),
              count,
              readings.get(0).firstIndex(),
              new SeriesCoder.Coded(CHUNK_VERSION, out.array())));
    }
    return rows;
  }

  /** The four series of one channel. */
  public static int[][] series(byte[] data, int count, Channel channel)
      throws MalformedChunkException {
    ByteBuffer in = ByteBuffer.wrap(data).order(ByteOrder.LITTLE_ENDIAN);
    int[][] series = new int[SERIES][];
    for (int s = 0; s < SERIES; s++) {
      if (in.remaining() < 5) {
        throw new MalformedChunkException("ends before series " + s);
      }
      int version = in.get() & 0xff;
      int length = in.getInt();
      if (length < 0 || length > in.remaining()) {
        throw new MalformedChunkException("series " + s + " claims " + length + " bytes");
      }
      byte[] part = new byte[length];
      in.get(part);
      series[s] = SeriesCoder.decode(version, part, count);
    }
    if (in.hasRemaining()) {
      throw new MalformedChunkException(in.remaining() + " bytes too many");
    }
    for (int k = 0; k < count; k++) {
      series[2][k] += series[1][k];
      series[3][k] += (int) leastSquares(series[0][k], channel);
    }
    return series;
  }

  /** Readings from four series per channel, in the order of the channels. */
  public static List<Reading> readings(int[][] values, Stretches stretches, int count)
      throws MalformedChunkException {
    List<Reading> readings = new ArrayList<>(count);
    int[] sums = new int[CHANNELS.length];
    int[] lowest = new int[CHANNELS.length];
    int[] highest = new int[CHANNELS.length];
    long[] squares = new long[CHANNELS.length];
    for (int s = 0; s < stretches.size(); s++) {
      long index = stretches.firstIndex(s);
      if (Math.floorMod(index, SamplePlan.CONVERSIONS_PER_READING) != 0) {
        throw new MalformedChunkException("reading at conversion " + index);
      }
      int end = stretches.end(s, count);
      for (int k = stretches.offset(s); k < end; k++) {
        for (int channel = 0; channel < CHANNELS.length; channel++) {
          sums[channel] = values[channel * SERIES][k];
          lowest[channel] = values[channel * SERIES + 1][k];
          highest[channel] = values[channel * SERIES + 2][k];
          squares[channel] = values[channel * SERIES + 3][k] & 0xffff_ffffL;
        }
        readings.add(new Reading(index, sums, lowest, highest, squares));
        index += SamplePlan.CONVERSIONS_PER_READING;
      }
    }
    return readings;
  }

  /** No values of this sum have a smaller sum of squares: sum squared over n, rounded down. */
  private static long leastSquares(int sum, Channel channel) {
    return (long) sum * sum / channel.conversionsPerReading();
  }
}
