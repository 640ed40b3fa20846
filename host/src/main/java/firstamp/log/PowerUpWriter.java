package firstamp.log;

import firstamp.log.LogException.Kind;
import firstamp.log.stream.ConversionGroup;
import firstamp.model.Alarm;
import firstamp.model.ProbeEvent;
import firstamp.model.TimeSource;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import firstamp.model.samples.SamplePlan;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.Consumer;

/**
 * Writes one power-up. Callers never wait for the disk: what they append goes into a queue, and a
 * thread of its own commits it every 200 ms.
 *
 * <p>When the disk is full or fails, what is not written waits in memory (up to a bound, then the
 * newest conversions are dropped and a gap is noted) and is written when there is room again. Safe
 * to share; whoever began it closes it.
 */
public final class PowerUpWriter implements AutoCloseable {
  /** Longest time between two commits. */
  static final long COMMIT_NANOS = 200_000_000L;

  private static final long RETRY_NANOS = 1_000_000_000L;
  private static final long ROOM_BYTES = 16 << 20;
  private static final long SLICE_BYTES = 8 << 20;
  private static final long CLOSE_NANOS = 10_000_000_000L;
  private static final int ITEM_BYTES = 400;

  /** Conversions that wait as one, from a multiple of this on; a chunk is a multiple of it. */
  private static final int RUN_CONVERSIONS = 3200;

  private final Path file;
  private final String uuid;
  private final StreamStore store;
  private final TimeSource time;
  private final long memoryBytes;
  private final Consumer<LogState> listener;
  private final Thread thread;

  private final Object lock = new Object();
  private List<Item> queue = new ArrayList<>();
  private Run open;
  private long waitingBytes;
  private long appended;
  private long written;
  private long dropped;
  private boolean lossSaid;
  private long number;
  private boolean flushing;
  private boolean closing;
  private long attempts;
  private long collectedNanos;
  private boolean silent;
  private LogException trouble;
  private LostConversions lost;

  /** Something to write. */
  @FunctionalInterface
  interface Item {
    void writeTo(StreamStore store) throws SQLException;

    default long bytes() {
      return ITEM_BYTES;
    }

    /** Whether no part of a chunk is left over behind it. */
    default boolean endsChunk() {
      return false;
    }
  }

  /**
   * Conversions that follow each other, of one block or several: what is waited for the disk lies
   * close together then, and is one thing to write.
   */
  private static final class Run implements Item {
    private final short[] counts;
    private final long firstIndex;
    private int length;

    Run(ConversionBlock block) {
      int length = block.counts().length;
      int room =
          (int) (RUN_CONVERSIONS - Math.floorMod(block.firstIndex(), (long) RUN_CONVERSIONS));
      counts = new short[Math.max(length, room)];
      firstIndex = block.firstIndex();
      add(block);
    }

    boolean takes(ConversionBlock block) {
      return block.firstIndex() == firstIndex + length
          && block.counts().length <= counts.length - length;
    }

    void add(ConversionBlock block) {
      int more = block.counts().length;
      System.arraycopy(block.counts(), 0, counts, length, more);
      length += more;
    }

    @Override
    public void writeTo(StreamStore store) throws SQLException {
      store.conversions(firstIndex, counts, length);
    }

    @Override
    public long bytes() {
      return ITEM_BYTES / 4 + 2L * counts.length;
    }

    @Override
    public boolean endsChunk() {
      return Math.floorMod(firstIndex + length, (long) StreamStore.GROUP_CONVERSIONS) == 0;
    }
  }

  private record LostConversions(long firstIndex, long count) implements Item {
    @Override
    public void writeTo(StreamStore store) throws SQLException {
      store.gap(firstIndex, count, "log");
    }
  }

  PowerUpWriter(
      Path file,
      StreamStore.Connector connector,
      long number,
      LogException later,
      PowerUpHeader header,
      EventCodec codec,
      TimeSource time,
      long memoryBytes,
      Consumer<LogState> listener) {
    this.file = file;
    this.number = number;
    this.uuid = header.uuid();
    this.store = new StreamStore(connector, number, header, codec);
    this.time = time;
    this.memoryBytes = memoryBytes;
    this.listener = listener;
    this.collectedNanos = time.monotonicNanos();
    this.thread = new Thread(this::run, "bench-log-writer");
    thread.setDaemon(true);
    if (later != null) {
      fail(later);
    }
    thread.start();
  }

  /** Number of the power-up in the log; 0 = its start still waits in memory. */
  public long number() {
    synchronized (lock) {
      return number;
    }
  }

  /** Unique name of the power-up. */
  public String uuid() {
    return uuid;
  }

  /** Appends conversions, which are copied. */
  public void append(ConversionBlock block) {
    ConversionGroup.checkRange(block.counts());
    int count = block.counts().length;
    synchronized (lock) {
      if (open != null && !closing && open.takes(block)) {
        open.add(block);
      } else if (count > 0) {
        Run run = new Run(block);
        if (put(run, block.firstIndex(), count)) {
          open = run;
        }
      }
    }
  }

  /** Appends a reading of a reduced stream. */
  public void append(Reading reading) {
    Objects.requireNonNull(reading, "reading");
    put(store -> store.reading(reading), reading.firstIndex(), SamplePlan.CONVERSIONS_PER_READING);
  }

  /** Appends an event at this place of the stream. */
  public void append(ProbeEvent event) {
    Objects.requireNonNull(event, "event");
    put(store -> store.event(event), 0, 0);
  }

  /** Notes a transition of an alarm. */
  public void alarm(Alarm alarm) {
    Objects.requireNonNull(alarm, "alarm");
    put(store -> store.alarm(alarm), 0, 0);
  }

  /**
   * Notes offset and drift of the probe's clock relative to the computer's.
   *
   * @param micros probe time of the fit
   * @param hostEpochMs computer's time of the fit
   * @param offsetMicros probe time minus computer's time since the start of the fit
   * @param driftPpm how much faster the probe's clock runs
   */
  public void clockFit(long micros, long hostEpochMs, long offsetMicros, double driftPpm) {
    put(store -> store.clockFit(micros, hostEpochMs, offsetMicros, driftPpm), 0, 0);
  }

  /**
   * Writes the end of the power-up and waits until all of it is in the file.
   *
   * @param summaryJson kept unchanged for ever
   * @param outcome of the summary
   * @param ended of the summary
   * @throws LogException it could not be written; it is tried again until {@link #close}
   */
  public void finish(String summaryJson, String outcome, String ended) throws LogException {
    long epochMs = time.epochMillis();
    put(store -> store.finish(summaryJson, outcome, ended, epochMs), 0, 0);
    flush();
  }

  /**
   * Waits until everything appended so far is in the file.
   *
   * @throws LogException the disk is full or failing; what waits is kept in memory
   */
  public void flush() throws LogException {
    synchronized (lock) {
      long until = appended;
      long first = attempts;
      while (written < until) {
        // One attempt may have been under way already: the second one held everything.
        if (trouble != null && attempts >= first + 2 || !thread.isAlive()) {
          throw trouble != null ? trouble : gone();
        }
        flushing = true;
        lock.notifyAll();
        awaitChange(COMMIT_NANOS);
      }
    }
  }

  /** Waits while much is queued: only for runs that are faster than the disk and not live. */
  public void awaitRoom() {
    synchronized (lock) {
      while (waitingBytes > ROOM_BYTES && trouble == null && thread.isAlive()) {
        awaitChange(COMMIT_NANOS);
      }
    }
  }

  /** Conversions that found no room in memory while the disk was full. */
  public long dropped() {
    synchronized (lock) {
      return dropped;
    }
  }

  /**
   * Ends the thread, after a last try to write what waits. A second call does nothing.
   *
   * @throws LogException something of this power-up is not in the file
   */
  @Override
  public void close() throws LogException {
    synchronized (lock) {
      closing = true;
      flushing = true;
      lock.notifyAll();
    }
    try {
      thread.join(CLOSE_NANOS / 1_000_000);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    synchronized (lock) {
      if (written < appended) {
        throw trouble != null ? trouble : gone();
      }
      if (dropped > 0 && !lossSaid) {
        lossSaid = true;
        throw new LogException(
            Kind.FULL,
            LogException.say(
                "power-up-writer.no-room-in-memory",
                String.format(
                    Locale.ROOT, "%.1f", dropped / (double) SamplePlan.CONVERSIONS_PER_SECOND),
                file));
      }
    }
  }

  private LogException gone() {
    return new LogException(
        Kind.IO, LogException.say("power-up-writer.the-writer-of-does-not", file));
  }

  /** False when there was no room for it. */
  private boolean put(Item item, long firstIndex, int conversions) {
    synchronized (lock) {
      if (closing) {
        throw new IllegalStateException("power-up " + uuid + " is closed");
      }
      if (conversions > 0 && waitingBytes + item.bytes() > memoryBytes) {
        dropped += conversions;
        lost =
            lost == null
                ? new LostConversions(firstIndex, conversions)
                : new LostConversions(lost.firstIndex, lost.count + conversions);
        return false;
      }
      if (lost != null && conversions > 0) {
        enqueue(lost);
        lost = null;
      }
      enqueue(item);
      return true;
    }
  }

  private void enqueue(Item item) {
    open = null;
    queue.add(item);
    appended++;
    waitingBytes += item.bytes();
    if (waitingBytes > SLICE_BYTES) {
      lock.notifyAll();
    }
  }

  private void run() {
    List<Item> unsaved = new ArrayList<>();
    try {
      while (collect(unsaved)) {
        save(unsaved);
      }
    } catch (RuntimeException e) {
      fail(
          new LogException(
              Kind.IO, LogException.say("power-up-writer.defect-while-writing", file, e), e));
    } finally {
      store.close();
      synchronized (lock) {
        lock.notifyAll();
      }
    }
  }

  /** Waits for the next commit; false when all is done. */
  private boolean collect(List<Item> unsaved) {
    synchronized (lock) {
      // From start to start: the time of a commit must not add to what a kill can lose.
      long until =
          unsaved.isEmpty() ? collectedNanos + COMMIT_NANOS : time.monotonicNanos() + RETRY_NANOS;
      while (!flushing && !closing && (!unsaved.isEmpty() || waitingBytes <= SLICE_BYTES)) {
        long left = until - time.monotonicNanos();
        if (left <= 0) {
          break;
        }
        awaitChange(left);
      }
      if (closing && trouble != null && !flushing) {
        return false;
      }
      if (lost != null && closing) {
        enqueue(lost);
        lost = null;
      }
      boolean hurry = !flushing && !closing && time.monotonicNanos() < until;
      flushing = false;
      open = null;
      int ended = hurry && unsaved.isEmpty() ? throughLastChunk() : 0;
      if (ended > 0) {
        // More comes than is written: what is left of a chunk would be written twice. It waits no
        // longer than it would have.
        unsaved.addAll(queue.subList(0, ended));
        queue.subList(0, ended).clear();
        return true;
      }
      collectedNanos = time.monotonicNanos();
      unsaved.addAll(queue);
      queue = new ArrayList<>();
      return !(closing && unsaved.isEmpty());
    }
  }

  /** How many items of the queue there are up to the last that ends a chunk. */
  private int throughLastChunk() {
    int ended = queue.size();
    while (ended > 0 && !queue.get(ended - 1).endsChunk()) {
      ended--;
    }
    return ended;
  }

  private void save(List<Item> unsaved) {
    int done = 0;
    try {
      while (done < unsaved.size()) {
        int end = done;
        long bytes = 0;
        boolean full = false;
        while (end < unsaved.size() && !full) {
          Item item = unsaved.get(end++);
          bytes += item.bytes();
          full = bytes >= SLICE_BYTES && item.endsChunk() || bytes >= 2 * SLICE_BYTES;
        }
        if (!Files.exists(file)) {
          // The system would keep writing into a file that nobody can open any more.
          store.close();
          fail(LogDatabase.gone("cannot write", file, null));
          break;
        }
        store.write(unsaved.subList(done, end));
        succeeded(end - done, bytes);
        done = end;
      }
    } catch (SQLException e) {
      fail(LogDatabase.failure("cannot write", file, e));
    }
    unsaved.subList(0, done).clear();
    synchronized (lock) {
      attempts++;
      lock.notifyAll();
    }
  }

  private void succeeded(int items, long bytes) {
    boolean back;
    long lostNow;
    synchronized (lock) {
      written += items;
      number = store.powerUp();
      waitingBytes -= bytes;
      back = silent;
      lostNow = dropped;
      trouble = null;
      silent = false;
      lock.notifyAll();
    }
    if (back) {
      listener.accept(LogState.back(lostNow));
    }
  }

  private void fail(LogException e) {
    boolean first;
    synchronized (lock) {
      first = !silent;
      silent = true;
      trouble = e;
      lock.notifyAll();
    }
    if (first) {
      listener.accept(LogState.trouble(e, file));
    }
  }

  private void awaitChange(long nanos) {
    boolean interrupted = false;
    try {
      lock.wait(Math.max(1, nanos / 1_000_000));
    } catch (InterruptedException e) {
      interrupted = true;
    }
    if (interrupted) {
      // Waiting again at once would spin: what is asked for here takes two commits at most.
      Thread.currentThread().interrupt();
      Thread.yield();
    }
  }
}
