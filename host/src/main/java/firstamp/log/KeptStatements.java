package firstamp.log;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.Map;

/**
 * Statements of one connection, each made ready once: that takes longer than to run most of them.
 * For those that are told apart by their text alone; values go in the place of question marks. Used
 * by the thread that uses the connection.
 */
final class KeptStatements implements AutoCloseable {
  private final Connection connection;
  private final Map<String, PreparedStatement> statements = new HashMap<>();

  KeptStatements(Connection connection) {
    this.connection = connection;
  }

  /** Runs a statement with these values. */
  void update(String sql, Object... values) throws SQLException {
    PreparedStatement statement = of(sql);
    for (int k = 0; k < values.length; k++) {
      statement.setObject(k + 1, values[k]);
    }
    statement.executeUpdate();
  }

  /** The statement of this text, which stays open. */
  PreparedStatement of(String sql) throws SQLException {
    PreparedStatement statement = statements.get(sql);
    if (statement == null) {
      statement = connection.prepareStatement(sql);
      statements.put(sql, statement);
    }
    return statement;
  }

  @Override
  public void close() throws SQLException {
    for (PreparedStatement statement : statements.values()) {
      statement.close();
    }
    statements.clear();
  }
}
