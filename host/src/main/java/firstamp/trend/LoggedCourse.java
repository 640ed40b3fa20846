package firstamp.trend;

import firstamp.log.LogException;
import firstamp.log.PowerUpHeader;
import firstamp.log.PowerUpReader;
import firstamp.model.ProbeEvent;
import firstamp.model.samples.Calibration;
import firstamp.model.samples.SamplePlan;
import firstamp.model.samples.Scaling;
import firstamp.model.samples.Zero;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;

/**
 * The course of a power-up in the log, in memory that does not grow with its length.
 *
 * <p>The coarsest level is read when it is opened. What is finer is read on a thread of its own
 * when somebody looks at it, and thrown away again when others are looked at; until it is there,
 * the next coarser one is given. Safe to share; close it to end its thread.
 */
public final class LoggedCourse implements TimeCourse, AutoCloseable {
  /** Width of a bucket per level; the wide ones are four times those of the log's pyramid. */
  private static final long[] BUCKET_MS = {Course.SLOT_MS, 400, 4_000, 40_000};

  private static final int COARSEST = BUCKET_MS.length - 1;
  private static final int TILE_BUCKETS = 1024;
  private static final int MOST_TILES = 96;
  private static final int LONGEST_READ_S = 5;

  private final PowerUpHeader header;
  private final Scaling scaling;
  private final long[] extent;
  private final TileMaker maker;
  private final long endMs;
  private final CourseTile[] coarsest;
  private final Map<Long, CourseTile> tiles =
      new LinkedHashMap<>(2 * MOST_TILES, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Long, CourseTile> eldest) {
          return size() > MOST_TILES;
        }
      };
  private final AtomicLong version = new AtomicLong();
  private final ExecutorService loader =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread thread = new Thread(task, "logged-course");
            thread.setDaemon(true);
            loading = thread;
            return thread;
          });
  private volatile Thread loading;
  private volatile String problem;

  private LoggedCourse(
      PowerUpHeader header, Scaling scaling, long[] extent, TileMaker maker, long endMs)
      throws LogException {
    this.header = header;
    this.scaling = scaling;
    this.extent = extent;
    this.maker = maker;
    this.endMs = endMs;
    long buckets = (endMs + BUCKET_MS[COARSEST] - 1) / BUCKET_MS[COARSEST];
    coarsest = new CourseTile[(int) ((buckets + TILE_BUCKETS - 1) / TILE_BUCKETS)];
    for (int k = 0; k < coarsest.length; k++) {
      coarsest[k] = load(COARSEST, k);
    }
  }

  /**
   * Opens the course of a power-up; takes about as long for a day as for a minute.
   *
   * @param reader of the power-up
   * @param events all of its events
   */
  public static LoggedCourse open(PowerUpReader reader, List<ProbeEvent> events)
      throws LogException {
    long[] extent = reader.extent();
    long reading = SamplePlan.CONVERSIONS_PER_READING;
    long origin = Math.floorDiv(extent[0] + reading - 1, reading) * reading;
    long end = Math.floorDiv(Math.max(0, extent[1] - origin), reading) * Course.SLOT_MS;
    PowerUpHeader header = reader.header();
    Scaling scaling = scaling(header.hello().calibration(), events);
    return new LoggedCourse(header, scaling, extent, new TileMaker(reader, scaling, origin), end);
  }

  /** Calibration with the zero of the look, as the chain has it in the end. */
  private static Scaling scaling(Calibration calibration, List<ProbeEvent> events) {
    Zero zero = null;
    for (ProbeEvent event : events) {
      if (event instanceof ProbeEvent.Looked looked) {
        zero = looked.look().zero();
      }
    }
    return new Scaling(calibration, zero == null ? Zero.NONE : zero);
  }

  /** What was known at the start. */
  public PowerUpHeader header() {
    return header;
  }

  /** Counts to ampere and volt. */
  public Scaling scaling() {
    return scaling;
  }

  /** Course time of a probe time. */
  public double courseMs(long micros) {
    long reading = SamplePlan.CONVERSIONS_PER_READING;
    long origin = Math.floorDiv(extent[0] + reading - 1, reading) * reading;
    return (micros - SamplePlan.microsOf(origin)) / 1000.0;
  }

  @Override
  public boolean isEmpty() {
    return endMs == 0;
  }

  @Override
  public long beginMs() {
    return 0;
  }

  @Override
  public long endMs() {
    return endMs;
  }

  @Override
  public long version() {
    return version.get();
  }

  /** Why part of it could not be read; null = nothing went wrong. */
  public String problem() {
    return problem;
  }

  @Override
  public void columns(
      Course.Quantity quantity,
      double fromMs,
      double toMs,
      int n,
      float[] low,
      float[] high,
      float[] mean) {
    if (!(toMs > fromMs) || n < 1) {
      throw new IllegalArgumentException(
          n + " columns from " + fromMs + " to " + toMs + " ms, expected at least 1 of some width");
    }
    double width = (toMs - fromMs) / n;
    int level = COARSEST;
    while (level > 0 && BUCKET_MS[level] > width) {
      level--;
    }
    CourseSpan span = new CourseSpan(quantity.ordinal());
    for (int column = 0; column < n; column++) {
      span.clear();
      take(span, level, fromMs + column * width, fromMs + (column + 1) * width);
      low[column] = span.low();
      high[column] = span.high();
      mean[column] = span.mean();
    }
  }

  /** Takes the buckets that begin in a span; where none does, the one around its start. */
  private void take(CourseSpan span, int level, double fromMs, double toMs) {
    double first = Math.max(0, fromMs);
    double last = Math.min(endMs, toMs);
    if (last <= first) {
      return;
    }
    CourseTile tile = tile(level, (long) (first / BUCKET_MS[level]) / TILE_BUCKETS);
    if (tile == null) {
      take(span, level + 1, fromMs, toMs);
      return;
    }
    long begin = (long) Math.ceil(first / BUCKET_MS[level]);
    long end = (long) Math.ceil(last / BUCKET_MS[level]);
    if (begin == end) {
      begin--;
    }
    for (long bucket = begin; bucket < end; ) {
      long index = bucket / TILE_BUCKETS;
      CourseTile holds = tile(level, index);
      long stop = Math.min(end, (index + 1) * TILE_BUCKETS);
      for (; bucket < stop; bucket++) {
        if (holds != null) {
          holds.addTo(span, (int) (bucket % TILE_BUCKETS));
        }
      }
    }
  }

  /** The tile, or null while it is being read. */
  private CourseTile tile(int level, long index) {
    if (level == COARSEST) {
      return coarsest[(int) Math.min(index, coarsest.length - 1)];
    }
    Long key = index << 2 | level;
    synchronized (tiles) {
      if (tiles.containsKey(key)) {
        return tiles.get(key);
      }
      tiles.put(key, null);
    }
    if (!loader.isShutdown()) {
      loader.execute(() -> loadInto(key, level, index));
    }
    return null;
  }

  private void loadInto(Long key, int level, long index) {
    synchronized (tiles) {
      if (!tiles.containsKey(key)) {
        return; // Nobody looks at it any more.
      }
    }
    try {
      CourseTile tile = load(level, index);
      synchronized (tiles) {
        tiles.put(key, tile);
      }
    } catch (LogException damaged) {
      problem = damaged.getMessage();
    }
    version.incrementAndGet();
  }

  private CourseTile load(int level, long index) throws LogException {
    long fromMs = index * TILE_BUCKETS * BUCKET_MS[level];
    return level == 0
        ? maker.fine(fromMs, TILE_BUCKETS)
        : maker.wide(fromMs, BUCKET_MS[level], TILE_BUCKETS);
  }

  /** Asks for a tile as if somebody looked at it. */
  void request(int level, long index) {
    tile(level, index);
  }

  /** Waits until all that was asked for is there. */
  void settle() throws InterruptedException, java.util.concurrent.ExecutionException {
    loader.submit(() -> {}).get();
  }

  /** Tiles held now, the coarsest not counted. */
  int held() {
    synchronized (tiles) {
      return tiles.size();
    }
  }

  /** Whether its thread may still touch the log. */
  boolean reading() {
    return !loader.isTerminated();
  }

  /** Ends the reading; when it returns nothing of the log is open any more. */
  @Override
  public void close() {
    loader.shutdownNow();
    Thread thread = loading;
    if (thread == null) {
      return;
    }
    try {
      // An executor counts as ended a moment before its thread is gone.
      thread.join(TimeUnit.SECONDS.toMillis(LONGEST_READ_S));
      if (thread.isAlive()) {
        problem = "A piece of the course is still being read after " + LONGEST_READ_S + " s.";
      }
    } catch (InterruptedException stop) {
      Thread.currentThread().interrupt();
    }
  }
}
