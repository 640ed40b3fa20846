package firstamp.log;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;

/**
 * Prepared statements of one connection, each made once: to prepare one takes longer than what it
 * reads for a short span, or writes for a row. Whoever gets one closes its answer, not the
 * statement; the statements go with the connection. Not thread-safe.
 */
final class Statements {
  private final Connection connection;
  private final Map<String, PreparedStatement> prepared = new HashMap<>();

  Statements(Connection connection) {
    this.connection = connection;
  }

  Connection connection() {
    return connection;
  }

  /** The statement with these values for its question marks. */
  PreparedStatement with(String sql, long... values) throws SQLException {
    PreparedStatement statement = prepared.get(sql);
    if (statement == null) {
      statement = connection.prepareStatement(sql);
      prepared.put(sql, statement);
    }
    for (int k = 0; k < values.length; k++) {
      statement.setLong(k + 1, values[k]);
    }
    return statement;
  }

  /** Runs a statement with these values for its question marks. */
  void update(String sql, Object... values) throws SQLException {
    PreparedStatement statement = with(sql);
    for (int k = 0; k < values.length; k++) {
      statement.setObject(k + 1, values[k]);
    }
    statement.executeUpdate();
  }
}
