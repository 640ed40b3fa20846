package firstamp.log;

import firstamp.log.code.MalformedChunkException;
import firstamp.log.stream.SpanCodec;
import firstamp.log.stream.Spans;
import firstamp.log.stream.StreamSink;
import firstamp.model.ProbeEvent;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;

/** Looks at everything in a log: pages, references, every chunk, event and level row. */
final class LogCheck {
  private static final int MOST_FINDINGS = 100;

  private final Connection connection;
  private final Statements statements;
  private final Path file;
  private final EventCodec codec;
  private final List<String> findings = new ArrayList<>();

  LogCheck(Connection connection, Path file, EventCodec codec) {
    this.connection = connection;
    this.statements = new Statements(connection);
    this.file = file;
    this.codec = codec;
  }

  List<String> run(List<PowerUpEntry> entries) throws SQLException {
    pages();
    if (findings.isEmpty()) {
      kinds();
    }
    if (findings.isEmpty()) {
      for (PowerUpEntry entry : entries) {
        powerUp(entry);
      }
    }
    return List.copyOf(findings);
  }

  private void pages() throws SQLException {
    try (Statement statement = connection.createStatement()) {
      try (ResultSet row = statement.executeQuery("PRAGMA integrity_check(20)")) {
        while (row.next()) {
          if (!"ok".equals(row.getString(1))) {
            find("pages: " + row.getString(1));
          }
        }
      }
      try (ResultSet row = statement.executeQuery("PRAGMA foreign_key_check")) {
        while (row.next() && findings.size() < MOST_FINDINGS) {
          find("a row of " + row.getString(1) + " belongs to no " + row.getString(3));
        }
      }
    }
  }

  /**
   * SQLite takes any kind of value in any column: a text where a number is expected would read as
   * 0, and a row found by one query would not be found by the next.
   */
  private void kinds() throws SQLException {
    List<String> columns = new ArrayList<>();
    try (Statement statement = connection.createStatement();
        ResultSet row =
            statement.executeQuery(
                "SELECT t.name, c.name, lower(c.type) FROM pragma_table_list t,"
                    + " pragma_table_info(t.name) c WHERE t.type = 'table'"
                    + " AND t.schema = 'main' AND t.name NOT LIKE 'sqlite%'")) {
      while (row.next()) {
        columns.add(row.getString(1));
        columns.add(row.getString(2));
        columns.add(row.getString(3));
      }
    }
    for (int k = 0; k < columns.size(); k += 3) {
      String column = columns.get(k + 1);
      try (PreparedStatement query =
          connection.prepareStatement(
              "SELECT count(*) FROM "
                  + columns.get(k)
                  + " WHERE typeof("
                  + column
                  + ") NOT IN (?, 'null')")) {
        query.setString(1, columns.get(k + 2));
        try (ResultSet row = query.executeQuery()) {
          if (row.next() && row.getLong(1) > 0) {
            find(
                row.getLong(1)
                    + " rows of "
                    + columns.get(k)
                    + ": "
                    + column
                    + " is no "
                    + columns.get(k + 2));
          }
        }
      }
    }
  }

  private void powerUp(PowerUpEntry entry) throws SQLException {
    StreamReader reader = new StreamReader(statements, file, entry, codec);
    long[] elements = {0};
    try {
      reader.replay(
          new StreamSink() {
            @Override
            public void conversions(ConversionBlock block) {
              elements[0] += block.counts().length;
            }

            @Override
            public void reading(Reading reading) {
              elements[0]++;
            }

            @Override
            public void event(ProbeEvent event) {
              if (event.micros() < 0) {
                find("power-up " + entry.number() + ": event before the probe's start");
              }
            }
          });
      long stored = stored(entry);
      if (stored != elements[0]) {
        find(
            "power-up "
                + entry.number()
                + ": "
                + elements[0]
                + " elements follow each other, "
                + stored
                + " are stored");
      }
      levels(entry);
    } catch (LogException e) {
      find(e.getMessage());
    }
  }

  private long stored(PowerUpEntry entry) throws SQLException {
    boolean raw = entry.stream() == PowerUpHeader.Stream.RAW;
    String chunks =
        raw
            ? "SELECT coalesce(sum(count), 0) FROM chunk WHERE power_up = ?1"
            : "SELECT coalesce(sum(count), 0) FROM chunk WHERE power_up = ?1 AND channel = 0";
    try (PreparedStatement query =
        connection.prepareStatement(
            "SELECT ("
                + chunks
                + ") + (SELECT coalesce(sum(count), 0) FROM tail WHERE power_up ="
                + " ?1)")) {
      query.setLong(1, entry.number());
      try (ResultSet row = query.executeQuery()) {
        return row.next() ? row.getLong(1) : 0;
      }
    }
  }

  private void levels(PowerUpEntry entry) throws SQLException {
    try (PreparedStatement query =
        connection.prepareStatement(
            "SELECT level, position, first_bucket, buckets, crc32c, data, version FROM span_level"
                + " WHERE power_up = ?")) {
      query.setLong(1, entry.number());
      try (ResultSet row = query.executeQuery()) {
        while (row.next()) {
          int level = row.getInt(1);
          String what = "power-up " + entry.number() + ": level " + level + " at " + row.getLong(2);
          byte[] data = row.getBytes(6);
          if (level < 0 || level >= Spans.LEVELS.length) {
            find(what + ": no such level");
          } else if (data == null || Rows.crc32c(data) != row.getLong(5)) {
            find(what + ": its CRC-32C does not match");
          } else {
            try {
              SpanCodec.unpack(
                  Spans.LEVELS[level], row.getLong(3), row.getInt(4), row.getInt(7), data);
            } catch (MalformedChunkException e) {
              find(what + ": " + e.getMessage());
            }
          }
        }
      }
    }
  }

  private void find(String what) {
    if (findings.size() < MOST_FINDINGS) {
      findings.add(what);
    }
  }
}
