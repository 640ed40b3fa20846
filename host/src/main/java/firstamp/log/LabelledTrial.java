package firstamp.log;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/**
 * Wire and place of a power-up from before schema 3, where the label alone said them: {@code W3 at
 * tag 10, second try}.
 *
 * @param wire of the sheet
 * @param place of the sheet
 */
record LabelledTrial(String wire, String place) {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  /**
   * The wire and place of the sheet that a label starts with; of several the longest.
   *
   * @param label null = none
   * @param sheetJson effective sheet of the power-up
   * @return null = it names none
   */
  static LabelledTrial of(String label, String sheetJson) {
    LabelledTrial found = null;
    int length = 0;
    for (LabelledTrial trial : label == null ? List.<LabelledTrial>of() : all(sheetJson)) {
      String begin = trial.wire + " at " + trial.place;
      if (begin.length() > length && label.startsWith(begin) && ends(label, begin.length())) {
        found = trial;
        length = begin.length();
      }
    }
    return found;
  }

  /** Fills wire and place of every power-up that has a label, within the caller's transaction. */
  static void fillAll(Connection connection) throws SQLException {
    List<Long> numbers = new ArrayList<>();
    try (PreparedStatement query =
            connection.prepareStatement("SELECT id FROM power_up WHERE label IS NOT NULL");
        ResultSet row = query.executeQuery()) {
      while (row.next()) {
        numbers.add(row.getLong(1));
      }
    }
    for (long number : numbers) {
      fill(connection, number);
    }
  }

  /** Fills wire and place of one power-up. */
  static void fill(Connection connection, long number) throws SQLException {
    LabelledTrial trial = null;
    try (PreparedStatement query =
        connection.prepareStatement("SELECT label, effective_sheet FROM power_up WHERE id = ?")) {
      query.setLong(1, number);
      try (ResultSet row = query.executeQuery()) {
        trial = row.next() ? of(row.getString(1), row.getString(2)) : null;
      }
    }
    if (trial != null) {
      String sql = "UPDATE power_up SET trial_wire = ?, trial_place = ? WHERE id = ?";
      Rows.update(connection, sql, trial.wire, trial.place, number);
    }
  }

  /** Whether a word ends there: "tag 1" does not match "tag 10". */
  private static boolean ends(String label, int at) {
    return at == label.length() || !Character.isLetterOrDigit(label.codePointAt(at));
  }

  private static List<LabelledTrial> all(String sheetJson) {
    List<LabelledTrial> all = new ArrayList<>();
    try {
      for (JsonNode wire : MAPPER.readTree(sheetJson).path("unknownWires")) {
        for (JsonNode place : wire.path("places")) {
          String name = place.isTextual() ? place.textValue() : place.path("name").asText("");
          all.add(new LabelledTrial(wire.path("name").asText(""), name));
        }
      }
    } catch (JsonProcessingException | IllegalArgumentException noSheet) {
      // An unreadable sheet names no wires; whoever needs the sheet reports the damage.
      return List.of();
    }
    return all;
  }
}
