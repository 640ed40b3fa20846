package firstamp.cli.output;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.log.LogException;
import firstamp.log.PowerUpEntry;
import firstamp.log.PowerUpHeader;
import firstamp.log.PowerUpReader;
import firstamp.model.Alarm;
import firstamp.model.ProbeEvent;
import firstamp.pipeline.HappeningJson;
import firstamp.pipeline.SummaryJson;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.Locale;

/** A power-up as CSV (RFC 4180) or as one JSON object. */
public final class PowerUpFiles {
  private static final String LINE_END = "\r\n";

  private PowerUpFiles() {}

  /**
   * The readings as CSV.
   *
   * <p>Cells hold numbers only, so that no spreadsheet finds a formula in a name or a mark; texts
   * are in the JSON export.
   */
  public static void csv(PowerUpReader reader, Path file, Progress progress)
      throws IOException, LogException {
    PowerUpTable table = new PowerUpTable(reader);
    try (BufferedWriter out =
        Files.newBufferedWriter(file, StandardCharsets.US_ASCII, StandardOpenOption.CREATE_NEW)) {
      out.write(String.join(",", PowerUpTable.COLUMNS));
      out.write(LINE_END);
      StringBuilder line = new StringBuilder();
      table.forEach(
          values -> {
            line.setLength(0);
            for (int k = 0; k < values.length; k++) {
              line.append(k == 0 ? "" : ",").append(number(values[k]));
            }
            write(out, line.append(LINE_END));
            progress.step();
          });
    } catch (UncheckedIOException failed) {
      throw failed.getCause();
    }
  }

  /** Everything about the power-up, readings as arrays, as one JSON object. */
  public static void json(PowerUpReader reader, Path file, Progress progress)
      throws IOException, LogException {
    ObjectMapper mapper = new ObjectMapper();
    PowerUpEntry entry = reader.entry();
    PowerUpHeader header = reader.header();
    PowerUpTable table = new PowerUpTable(reader);
    try (Writer out =
            Files.newBufferedWriter(file, StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW);
        JsonGenerator json = mapper.createGenerator(out)) {
      json.writeStartObject();
      json.writeStringField("type", "export");
      json.writeStringField("uuid", entry.uuid());
      if (entry.label() != null) {
        json.writeStringField("label", entry.label());
      }
      json.writeStringField("set", entry.setName());
      json.writeStringField("startedAt", Instant.ofEpochMilli(entry.startedEpochMs()).toString());
      json.writeStringField("stream", entry.stream().id());
      json.writeStringField("probe", entry.probeKind());
      json.writeFieldName("sheet");
      json.writeTree(mapper.readTree(header.sheetJson()));
      if (entry.summaryJson() != null) {
        json.writeFieldName("summary");
        json.writeTree(mapper.readTree(entry.summaryJson()));
      }
      json.writeArrayFieldStart("alarmTransitions");
      for (Alarm alarm : reader.alarmTransitions()) {
        ObjectNode node = JsonLines.object("alarm");
        json.writeTree(SummaryJson.put(alarm, node));
      }
      json.writeEndArray();
      marks(reader, table, json);
      happenings(reader, table, json);
      json.writeObjectField("columns", PowerUpTable.COLUMNS);
      json.writeArrayFieldStart("readings");
      table.forEach(
          values -> {
            try {
              json.writeRaw(System.lineSeparator());
              json.writeStartArray();
              for (double value : values) {
                if (Double.isNaN(value)) {
                  json.writeNull();
                } else {
                  json.writeNumber(number(value));
                }
              }
              json.writeEndArray();
            } catch (IOException failed) {
              throw new UncheckedIOException(failed);
            }
            progress.step();
          });
      json.writeEndArray();
      json.writeEndObject();
    } catch (UncheckedIOException failed) {
      throw failed.getCause();
    }
  }

  private static void marks(PowerUpReader reader, PowerUpTable table, JsonGenerator json)
      throws IOException, LogException {
    long zeroMicros = table.zeroMicros();
    json.writeArrayFieldStart("marks");
    for (ProbeEvent event : reader.events()) {
      if (event instanceof ProbeEvent.Marked mark) {
        json.writeStartObject();
        json.writeNumberField("atMs", (mark.micros() - zeroMicros) / 1e3);
        json.writeStringField("text", mark.text());
        json.writeEndObject();
      }
    }
    json.writeEndArray();
  }

  private static void happenings(PowerUpReader reader, PowerUpTable table, JsonGenerator json)
      throws IOException, LogException {
    long zeroMicros = table.zeroMicros();
    json.writeArrayFieldStart("events");
    for (ProbeEvent event : reader.events()) {
      if (event instanceof ProbeEvent.Happened happened) {
        double atMs = (happened.micros() - zeroMicros) / 1e3;
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        json.writeRawValue(HappeningJson.put(happened.what(), atMs, node).toString());
      }
    }
    json.writeEndArray();
  }

  private static void write(Writer out, CharSequence text) {
    try {
      out.append(text);
    } catch (IOException failed) {
      throw new UncheckedIOException(failed);
    }
  }

  /**
   * Six places after the point at most: under a tenth of the finest count but for the head. Empty
   * where nothing was measured.
   */
  static String number(double value) {
    if (Double.isNaN(value)) {
      return "";
    }
    if (value == 0) {
      return "0";
    }
    if (Math.abs(value) < 0.01) {
      return String.format(Locale.ROOT, "%.5e", value);
    }
    return String.format(Locale.ROOT, "%.6f", value);
  }
}
