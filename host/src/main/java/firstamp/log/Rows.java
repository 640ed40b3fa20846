package firstamp.log;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.zip.CRC32C;

/** What every writer and reader of rows needs. */
public final class Rows {
  private Rows() {}

  /** Runs a statement with these values for its question marks. */
  static void update(Connection connection, String sql, Object... values) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int k = 0; k < values.length; k++) {
        statement.setObject(k + 1, values[k]);
      }
      statement.executeUpdate();
    }
  }

  /** Check value of a row's data. */
  public static long crc32c(byte[] data) {
    CRC32C crc = new CRC32C();
    crc.update(data, 0, data.length);
    return crc.getValue();
  }
}
