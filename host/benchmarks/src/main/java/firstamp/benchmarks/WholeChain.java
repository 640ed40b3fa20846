package firstamp.benchmarks;

import firstamp.log.BenchLog;
import firstamp.log.LogException;
import firstamp.log.PowerUpHeader;
import firstamp.log.PowerUpWriter;
import firstamp.model.Alarm;
import firstamp.model.JobSheet;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.ProbeHello;
import firstamp.model.SwitchState;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import firstamp.pipeline.Chain;
import firstamp.pipeline.ChainListener;
import firstamp.pipeline.StreamSink;
import firstamp.protocol.frame.Frame;
import firstamp.protocol.frame.FrameDecoder;
import firstamp.protocol.frame.FrameEncoder;
import firstamp.protocol.frame.RawBlock;
import firstamp.run.LiveRun;
import firstamp.run.talk.FrameTranslator;
import firstamp.sheet.Defaults;
import firstamp.sheet.SheetException;
import firstamp.sheet.SheetReader;
import firstamp.sheet.SheetWriter;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadInfo;
import java.lang.management.ThreadMXBean;
import java.util.UUID;

/**
 * The way of a live raw stream, as {@link LiveRun} goes it: bytes of the line to frames, to
 * conversions, to the log, and to readings, rules and figures.
 */
public final class WholeChain {
  private static final int PIECE_BYTES = 4096;
  private static final long CLOSED_MICROS = 2_000_000;
  private static final String SHEET =
      "{\"sheet\":1,\"set\":{\"name\":\"Larch D2 dictation unit (invented)\"},"
          + "\"supply\":{\"nominalV\":12,\"limitA\":1.5,\"fuseA\":1},"
          + "\"limits\":{\"inrushA\":4.5,\"inrushMs\":60,\"runningA\":1.0,\"i2tA2s\":0.3},"
          + "\"rails\":[{\"input\":1,\"name\":\"B1\",\"nominalV\":5,\"rippleMaxVrms\":0.5,"
          + "\"capacitanceUf\":2200,\"rectifier\":\"full\"},{\"input\":3,\"name\":\"B3\","
          + "\"nominalV\":12}],"
          + "\"levels\":{\"toneHz\":400,\"headOhm\":10,\"expectedDb\":6}}";

  /**
   * What one run took.
   *
   * @param conversions that went through
   * @param alarms transitions that the rules raised: the rules were awake
   * @param chainSeconds processor time of the session's thread
   * @param logSeconds processor time of the log's thread
   * @param wallSeconds from the first byte until everything was committed
   */
  public record Spent(
      long conversions, long alarms, double chainSeconds, double logSeconds, double wallSeconds) {
    /** Conversions a second if one thread did everything. */
    public double onOneThread() {
      return conversions / (chainSeconds + logSeconds);
    }
  }

  private WholeChain() {}

  /** The bytes that a probe would send for these conversions. */
  public static byte[] line(short[] counts) {
    int block = 128;
    FrameEncoder encoder = new FrameEncoder();
    byte[] line = new byte[(counts.length / block + 1) * 180 + FrameEncoder.LONGEST_ON_LINE_BYTES];
    int length = 0;
    for (int k = 0; k < counts.length; k += block) {
      int number = Math.min(block, counts.length - k);
      long tick = (k * 125L / 2) & 0xffff_ffffL;
      length += encoder.encodeRaw(k & 31, 0, counts, k, number, tick, line, length);
    }
    return java.util.Arrays.copyOf(line, length);
  }

  /** Sends a line's bytes through everything into a new power-up of the log. */
  public static Spent run(BenchLog log, byte[] line) throws LogException, SheetException {
    JobSheet stated = SheetReader.parse("benchmark", SHEET).sheet();
    JobSheet effective = Defaults.fill(stated);
    ProbeHello hello = hello();
    PowerUpHeader header =
        new PowerUpHeader(
            UUID.randomUUID().toString(),
            "benchmark",
            "Larch D2 dictation unit (invented)",
            1_700_000_000_000L,
            PowerUpHeader.Stream.RAW,
            hello,
            SHEET,
            SheetWriter.write(effective),
            "{}",
            null);
    try (PowerUpWriter writer = log.begin(header, state -> {})) {
      Feed feed = new Feed(writer, effective, hello);
      ThreadMXBean threads = ManagementFactory.getThreadMXBean();
      long before = threads.getCurrentThreadCpuTime();
      long begin = System.nanoTime();
      for (int at = 0; at < line.length; at += PIECE_BYTES) {
        feed.decoder.push(line, at, Math.min(PIECE_BYTES, line.length - at));
        writer.awaitRoom();
      }
      writer.flush();
      long wall = System.nanoTime() - begin;
      long own = threads.getCurrentThreadCpuTime() - before;
      double logSeconds = ofWriter(threads) / 1e9;
      writer.finish("{}", "normal", "time");
      return new Spent(feed.conversions, feed.alarms, own / 1e9, logSeconds, wall / 1e9);
    }
  }

  private static long ofWriter(ThreadMXBean threads) {
    for (long id : threads.getAllThreadIds()) {
      ThreadInfo info = threads.getThreadInfo(id);
      if (info != null && info.getThreadName().equals("bench-log-writer")) {
        return threads.getThreadCpuTime(id);
      }
    }
    throw new IllegalStateException("the log's writer has no thread of its name");
  }

  private static ProbeHello hello() {
    return new ProbeHello(
        1,
        0,
        1,
        7,
        1,
        SwitchState.OFF,
        3,
        0,
        0,
        null,
        Calibration.nominal(),
        10.0,
        330.0,
        "emulated probe");
  }

  /** What stands between the line and the log. */
  private static final class Feed implements FrameDecoder.Sink, StreamSink, ChainListener {
    final FrameDecoder decoder = new FrameDecoder(this);
    private final FrameTranslator translator = new FrameTranslator(this);
    private final PowerUpWriter writer;
    private final Chain chain;
    private boolean closed;
    long conversions;
    long alarms;

    Feed(PowerUpWriter writer, JobSheet effective, ProbeHello hello) {
      this.writer = writer;
      this.chain = new Chain(effective, hello, true, "benchmark", this);
    }

    @Override
    public void frame(Frame frame) {
      throw new IllegalStateException("only raw blocks are sent");
    }

    @Override
    public void raw(RawBlock block) {
      translator.raw(block);
    }

    @Override
    public void accept(ConversionBlock block) {
      if (!closed && translator.lastMicros() >= CLOSED_MICROS) {
        closed = true;
        accept(new ProbeEvent.SwitchChanged(CLOSED_MICROS, SwitchState.ON, OffCause.USER));
      }
      conversions += block.counts().length;
      writer.append(block);
      chain.accept(block);
    }

    @Override
    public void accept(Reading reading) {
      throw new IllegalStateException("only conversions are sent");
    }

    @Override
    public void accept(ProbeEvent event) {
      writer.append(event);
      chain.accept(event);
    }

    @Override
    public void alarm(Alarm alarm) {
      alarms++;
      writer.alarm(alarm);
    }
  }
}
