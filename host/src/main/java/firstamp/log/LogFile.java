package firstamp.log;

import firstamp.log.LogException.Kind;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.sql.SQLException;

/** The file of a bench log before SQLite sees it: made aside, looked at before it is opened. */
final class LogFile {
  private LogFile() {}

  /** Makes an empty log where none is. */
  static void make(Path file) throws LogException, IOException, SQLException {
    if (Files.isSymbolicLink(file)) {
      throw new LogException(
          Kind.MISSING, LogException.say("bench-log.is-a-symbolic-link-that", file));
    }
    Files.createDirectories(file.getParent());
    // Made aside and moved into place: a kill in between leaves no half-made log behind.
    Path aside = Files.createTempFile(file.getParent(), ".firstamp-new", ".db");
    try {
      LogDatabase.create(aside);
      Files.move(aside, file);
    } finally {
      Files.deleteIfExists(aside);
      Files.deleteIfExists(Path.of(aside + "-wal"));
      Files.deleteIfExists(Path.of(aside + "-shm"));
    }
  }

  /** Refuses what is no ordinary, readable file, and links where SQLite keeps its own. */
  static void checkKind(Path file) throws LogException {
    if (!Files.isRegularFile(file)) {
      throw new LogException(
          Kind.NOT_A_LOG, LogException.say("bench-log.is-no-ordinary-file-name", file));
    }
    if (!Files.isReadable(file)) {
      throw new LogException(
          Kind.UNREADABLE, LogException.say("bench-log.cannot-read-no-permission-change", file));
    }
    Path wal = Path.of(file + "-wal");
    if (Files.isSymbolicLink(wal) || Files.isSymbolicLink(Path.of(file + "-shm"))) {
      throw new LogException(
          Kind.NOT_A_LOG,
          LogException.say("bench-log.a-symbolic-link-stands-beside", file, wal.getFileName()));
    }
    if (Files.exists(wal, LinkOption.NOFOLLOW_LINKS) && !Files.isReadable(wal)) {
      throw new LogException(
          Kind.UNREADABLE, LogException.say("bench-log.cannot-read-no-permission-change", wal));
    }
  }
}
