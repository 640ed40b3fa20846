package firstamp.log;

import firstamp.log.LogException.Kind;
import firstamp.model.PersonFolders;
import firstamp.model.TimeSource;
import firstamp.model.text.FailureWords;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/**
 * A bench log: begins, lists and finds power-ups.
 *
 * <p>Holds no connection open between calls, so that other programs can read the file at any time.
 * Safe to share. Whoever opened it closes it: closing leaves one file behind.
 */
public final class BenchLog implements AutoCloseable {
  /** Schema of the logs that this program writes. */
  public static final int SCHEMA = LogSchema.NEWEST;

  /** Unsaved items kept in memory while the disk is full: about half an hour of a raw stream. */
  static final long MEMORY_BYTES = 64 << 20;

  /** Characters of a uuid's first group; no log counts its power-ups that far. */
  private static final int UUID_FIRST_GROUP = 8;

  private final Path file;
  private final Path named;
  private final TimeSource time;
  private final boolean writable;
  private final BooleanSupplier diskFull;
  private final Path keptBefore;
  private final EventCodec codec = new EventCodec();
  private final IdleConnection idle;
  private boolean wrote;
  private boolean toRepack;

  private BenchLog(
      Path named, TimeSource time, boolean writable, BooleanSupplier diskFull, Path keptBefore) {
    this.keptBefore = keptBefore;
    this.diskFull = diskFull;
    this.named = named;
    this.file = named.toAbsolutePath();
    this.idle = new IdleConnection(file);
    this.time = time;
    this.writable = writable;
  }

  /** Where the bench log is when no other file is named. */
  public static Path defaultFile() {
    return PersonFolders.ofThisPerson().data().resolve("firstamp").resolve("bench.db");
  }

  /** Loads what the first log would otherwise wait for, while the caller does something else. */
  public static void prepare() {
    try {
      LogDatabase.prepare();
    } catch (SQLException later) {
      // Opening the log fails in the same way and names the file.
      return;
    }
  }

  /**
   * Opens a bench log for reading and writing, or makes it (with its folders) where none is. One of
   * an older schema is brought forward, after a copy of it was made beside it ({@link
   * #keptBefore}).
   *
   * @throws LogException the file is no bench log, newer, damaged, or cannot be read or written; or
   *     it is older and cannot be copied: then it stays as it was
   */
  public static BenchLog open(Path file, TimeSource time) throws LogException {
    Objects.requireNonNull(time, "time");
    Path absolute = file.toAbsolutePath();
    Path keptBefore = null;
    try {
      if (!Files.exists(absolute)) {
        LogFile.make(absolute);
      }
      LogFile.checkKind(absolute);
      if (!Files.isWritable(absolute)) {
        throw new LogException(
            Kind.READ_ONLY,
            LogException.say("bench-log.cannot-write-no-permission-change", absolute));
      }
      LogDatabase.checkHeader(absolute);
      try (Connection connection = LogDatabase.openForWriting(absolute)) {
        int schema = LogSchema.check(connection, absolute);
        if (schema < LogSchema.NEWEST) {
          keptBefore = LogTransfer.backupBeside(absolute, schema);
          LogSchema.bringForward(connection, schema);
        }
      }
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot open", absolute, e);
    } catch (IOException e) {
      throw new LogException(
          Kind.READ_ONLY,
          LogException.say(
              "bench-log.cannot-make-check-that-its", absolute, FailureWords.worded(e)),
          e);
    }
    return new BenchLog(file, time, true, () -> false, keptBefore);
  }

  /**
   * Opens an existing bench log for reading only; nothing beside it is made where its folder cannot
   * be written.
   *
   * @throws LogException it is missing, no bench log, newer, damaged or unreadable
   */
  public static BenchLog openForReading(Path file, TimeSource time) throws LogException {
    Path absolute = file.toAbsolutePath();
    if (!Files.exists(absolute)) {
      throw new LogException(
          Kind.MISSING, LogException.say("bench-log.there-is-no-bench-log", absolute));
    }
    LogFile.checkKind(absolute);
    LogDatabase.checkHeader(absolute);
    BenchLog log = new BenchLog(file, time, false, () -> false, null);
    try (Connection connection = log.reading()) {
      LogSchema.check(connection, absolute);
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot open", absolute, e);
    }
    return log;
  }

  /** The same log on a disk that is full while this says so: for the demo and for tests. */
  public BenchLog onDisk(BooleanSupplier full) {
    return new BenchLog(named, time, writable, full, keptBefore);
  }

  /** The file, absolute. */
  public Path file() {
    return file;
  }

  /** Where the log as it was is kept, if opening has brought it forward; null = it has not. */
  public Path keptBefore() {
    return keptBefore;
  }

  /** The file as it was named: what is kept of it and handed on shows no more of the computer. */
  public Path named() {
    return named;
  }

  /**
   * Begins a power-up. Where the disk is full or failing this moment, its start waits in memory
   * with everything after it.
   *
   * @param listener told, on the writer's thread, when writing stops working and when it works
   *     again
   * @throws LogException the file is damaged: nothing could ever be written
   */
  public PowerUpWriter begin(PowerUpHeader header, Consumer<LogState> listener)
      throws LogException {
    return begin(header, listener, MEMORY_BYTES, new OwnFile());
  }

  /** Connections to this log. */
  private final class OwnFile implements StreamStore.Connector {
    @Override
    public Connection open() throws SQLException {
      return LogDatabase.openForWriting(file);
    }

    @Override
    public void checkRoom() throws SQLException {
      if (diskFull.getAsBoolean()) {
        throw new SQLiteException("no room on this invented disk", SQLiteErrorCode.SQLITE_FULL);
      }
    }
  }

  PowerUpWriter begin(
      PowerUpHeader header,
      Consumer<LogState> listener,
      long memoryBytes,
      StreamStore.Connector connector)
      throws LogException {
    if (!writable) {
      throw new IllegalStateException(file + " was opened for reading only");
    }
    wrote = true;
    toRepack = true;
    long number = 0;
    LogException later = null;
    try (Connection connection = connector.open()) {
      connection.setAutoCommit(false);
      number = PowerUpRow.insert(connection, header, codec);
      connection.commit();
    } catch (SQLException e) {
      LogException failure = LogDatabase.failure("cannot begin a power-up in", file, e);
      if (failure.kind() == Kind.DAMAGED || failure.kind() == Kind.NOT_A_LOG) {
        throw failure;
      }
      number = 0;
      later = failure;
    }
    return new PowerUpWriter(
        file, connector, number, later, header, codec, time, memoryBytes, listener);
  }

  /** All power-ups, oldest first. */
  public List<PowerUpEntry> list() throws LogException {
    return entries("ORDER BY id");
  }

  /**
   * One power-up.
   *
   * @param id number, unique name (or its first characters, at least 4) or {@code last}
   * @throws LogException none of this name, or more than one
   */
  public PowerUpReader find(String id) throws LogException {
    PowerUpEntry entry = entry(id);
    return new PowerUpReader(this, entry, codec);
  }

  /**
   * Adds an event to a finished power-up, behind all that it has: a mark, words for a mark, that
   * alarms were seen. The stored summary stays as it is.
   */
  public void later(long number, firstamp.model.ProbeEvent event) throws LogException {
    entry(Long.toString(number));
    wrote = true;
    LaterEvents.add(file, number, event, codec);
  }

  /** Sets the two flags of a power-up. */
  public void flag(long number, boolean asFound, boolean baseline) throws LogException {
    wrote = true;
    try (Connection connection = LogDatabase.openForWriting(file);
        PreparedStatement update =
            connection.prepareStatement(
                "UPDATE power_up SET as_found = ?, baseline = ? WHERE id = ?")) {
      update.setBoolean(1, asFound);
      update.setBoolean(2, baseline);
      update.setLong(3, number);
      if (update.executeUpdate() == 0) {
        throw missing(Long.toString(number));
      }
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot write", file, e);
    }
  }

  /**
   * What an import did.
   *
   * @param numbers of the new power-ups in this log
   * @param skipped unique names of those that were there already
   */
  public record Imported(List<Long> numbers, List<String> skipped) {}

  /** Writes power-ups into a new, self-contained file. */
  public void exportTo(List<Long> numbers, Path target) throws LogException {
    for (long number : numbers) {
      entry(Long.toString(number));
    }
    LogTransfer.export(this, numbers, target);
  }

  /**
   * Takes every power-up of another log that is not here yet, after all checks on that file.
   *
   * @throws LogException a check failed (nothing was taken), or the log cannot be written
   */
  public Imported importFrom(Path source) throws LogException {
    wrote = true;
    toRepack = true;
    return LogTransfer.importInto(source.toAbsolutePath(), file, codec, time);
  }

  /** Copies the whole log into a new file, also while it is being written. */
  public void backupTo(Path target) throws LogException {
    LogTransfer.backup(this, target);
  }

  /** Deletes a power-up and frees its space. */
  public void delete(long number) throws LogException {
    entry(Long.toString(number));
    wrote = true;
    try (Connection connection = LogDatabase.openForWriting(file)) {
      Rows.update(connection, "DELETE FROM power_up WHERE id = ?", number);
      LogDatabase.returnFreePages(connection);
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot delete from", file, e);
    }
  }

  /**
   * Looks at every page, reference, chunk and event.
   *
   * @return what was found, in words; empty = all is well
   */
  public List<String> check() throws LogException {
    try (Connection connection = reading()) {
      return new LogCheck(connection, file, codec).run(EntryRows.of(connection, "ORDER BY id"));
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot check", file, e);
    }
  }

  /**
   * Makes finished power-ups smaller. Takes about a second per ten minutes of a raw stream.
   *
   * @param goOn asked now and then; false stops it, and the next call continues from there
   */
  public void repack(BooleanSupplier goOn) throws LogException {
    wrote = true;
    toRepack = true;
    try (Connection connection = LogDatabase.openForWriting(file)) {
      List<PowerUpEntry> entries = EntryRows.of(connection, "WHERE state = 'finished'");
      connection.setAutoCommit(false);
      Statements statements = new Statements(connection);
      for (PowerUpEntry entry : entries) {
        if (!new Repacker(statements, file, entry, codec).repack(goOn)) {
          return;
        }
      }
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot repack", file, e);
    }
  }

  /**
   * Finishes the repack, returns free pages, empties the WAL and leaves one file. A second call
   * does nothing.
   */
  @Override
  public void close() throws LogException {
    close(() -> true);
  }

  /**
   * The same for where somebody waits: what is not repacked by then is left to the next close.
   *
   * @param millis after which no other group of chunks is begun
   */
  public void closeWithin(long millis) throws LogException {
    long until = time.monotonicNanos() + millis * 1_000_000;
    close(() -> time.monotonicNanos() - until < 0);
  }

  private void close(BooleanSupplier goOn) throws LogException {
    try {
      idle.close();
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot close", file, e);
    }
    if (!wrote) {
      return;
    }
    // A note or a flag adds nothing to repack: saving one does not wait for pending repacks.
    if (toRepack) {
      repack(goOn);
    }
    wrote = false;
    toRepack = false;
    try (Connection connection = LogDatabase.openForWriting(file);
        Statement statement = connection.createStatement()) {
      LogDatabase.returnFreePages(connection);
      statement.execute("PRAGMA wal_checkpoint(TRUNCATE)");
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot tidy up", file, e);
    }
  }

  Connection reading() throws SQLException {
    return LogDatabase.openForReading(file);
  }

  /** Reads on a connection that is kept for the next time: for what is drawn. */
  <T> T read(IdleConnection.Reading<T> reading) throws SQLException, LogException {
    return idle.read(reading);
  }

  private PowerUpEntry entry(String id) throws LogException {
    List<PowerUpEntry> found;
    if (id.equals("last")) {
      found = entries("ORDER BY id DESC LIMIT 1");
    } else if (id.matches("[0-9]{1,18}")) {
      found = entries("WHERE id = ?", Long.parseLong(id));
      if (found.isEmpty() && id.length() >= UUID_FIRST_GROUP) {
        found = beginningWith(id);
      }
    } else if (id.matches("[0-9a-fA-F-]{4,36}")) {
      found = beginningWith(id);
    } else {
      found = List.of();
    }
    if (found.isEmpty()) {
      throw missing(id);
    }
    if (found.size() > 1) {
      throw new LogException(
          Kind.MISSING, LogException.say("bench-log.more-than-one-power-up", file, id));
    }
    return found.get(0);
  }

  /** Two at most: enough to know that a name is not unique. */
  private List<PowerUpEntry> beginningWith(String uuid) throws LogException {
    return entries(
        "WHERE substr(uuid, 1, ?) = ? LIMIT 2", uuid.length(), uuid.toLowerCase(Locale.ROOT));
  }

  private List<PowerUpEntry> entries(String which, Object... values) throws LogException {
    try (Connection connection = reading()) {
      return EntryRows.of(connection, which, values);
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot read", file, e);
    }
  }

  private LogException missing(String id) {
    return new LogException(
        Kind.MISSING, LogException.say("bench-log.no-power-up-in-expected", id, file));
  }

  /** Keeps a calibration that was written into a probe; one that is there already stays once. */
  public void keep(firstamp.model.samples.Calibration made) throws LogException {
    wrote = true;
    try (Connection connection = LogDatabase.openForWriting(file)) {
      PowerUpRow.calibration(connection, codec.json(made));
    } catch (SQLException e) {
      throw LogDatabase.failure("cannot keep the calibration in", file, e);
    }
  }
}
