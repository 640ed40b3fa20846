package firstamp.emulate.probe;

import firstamp.emulate.line.FrameOutput;
import firstamp.model.samples.Channel;
import firstamp.model.samples.SamplePlan;
import firstamp.protocol.codes.StreamKind;
import firstamp.protocol.message.ProbeMessage;
import firstamp.protocol.values.ChannelSum;
import java.util.ArrayList;
import java.util.List;

/** Puts conversions into the raw or the reduced stream. */
final class StreamOut {
  private static final int CHANNELS = Channel.values().length;

  private final FrameOutput outlet;
  private final short[] block = new short[ProbeMessage.Raw.MOST_CONVERSIONS];
  private final int[] sum = new int[CHANNELS];
  private final int[] lowest = new int[CHANNELS];
  private final int[] highest = new int[CHANNELS];
  private final long[] squares = new long[CHANNELS];
  private StreamKind kind = StreamKind.NONE;
  private boolean running;
  private int inBlock;
  private long blockFrom;
  private long sent;

  StreamOut(FrameOutput outlet) {
    this.outlet = outlet;
  }

  StreamKind kind() {
    return kind;
  }

  /** Conversions put into the stream since it was chosen. */
  long sent() {
    return sent;
  }

  /** Sends what was taken, then follows the new choice. */
  void choose(StreamKind next) {
    flush();
    if (next != StreamKind.NONE) {
      sent = 0;
    }
    kind = next;
    running = false;
  }

  void conversion(long n, Channel channel, int counts) {
    if (kind == StreamKind.RAW) {
      raw(n, counts);
    } else if (kind == StreamKind.REDUCED) {
      reduced(n, channel, counts);
    }
  }

  private void raw(long n, int counts) {
    running |= n % SamplePlan.SLOTS == 0;
    if (!running) {
      return;
    }
    if (inBlock == 0) {
      blockFrom = n;
    }
    block[inBlock++] = (short) counts;
    if (inBlock == block.length) {
      flush();
    }
  }

  private void flush() {
    if (inBlock == 0) {
      return;
    }
    sent += inBlock;
    int number = inBlock;
    inBlock = 0;
    outlet.sendRaw(
        (int) (blockFrom % SamplePlan.SLOTS), 0, block, number, SamplePlan.microsOf(blockFrom));
  }

  private void reduced(long n, Channel channel, int counts) {
    int place = (int) (n % SamplePlan.CONVERSIONS_PER_READING);
    if (place == 0) {
      running = true;
      for (int c = 0; c < CHANNELS; c++) {
        sum[c] = 0;
        squares[c] = 0;
        lowest[c] = Converter.HIGHEST_COUNTS;
        highest[c] = 0;
      }
    }
    if (!running) {
      return;
    }
    int c = channel.ordinal();
    sum[c] += counts;
    squares[c] += (long) counts * counts;
    lowest[c] = Math.min(lowest[c], counts);
    highest[c] = Math.max(highest[c], counts);
    if (place == SamplePlan.CONVERSIONS_PER_READING - 1) {
      sendReading(n - place);
    }
  }

  private void sendReading(long first) {
    List<ChannelSum> sums = new ArrayList<>(CHANNELS);
    for (int c = 0; c < CHANNELS; c++) {
      sums.add(new ChannelSum(sum[c], lowest[c], highest[c], squares[c]));
    }
    sent += SamplePlan.CONVERSIONS_PER_READING;
    outlet.send(new ProbeMessage.Reading(0, false, sums), SamplePlan.microsOf(first));
  }
}
