package firstamp.pipeline;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;

/** What the probe was told, as JSON for the log. */
public final class SettingsJson {
  private static final ObjectMapper MAPPER = JsonMapper.builder().build();

  private SettingsJson() {}

  public static String of(PlannedSettings settings) {
    try {
      return MAPPER.writeValueAsString(settings);
    } catch (JsonProcessingException impossible) {
      throw new IllegalStateException("limits that are no JSON", impossible);
    }
  }
}
