package firstamp.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import firstamp.emulate.Scenarios;
import firstamp.model.RuleId;
import firstamp.sheet.SheetField;
import firstamp.window.pages.FormSections;
import firstamp.window.words.Words;
import java.io.File;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class SheetEntriesTest {
  private static final String SMALL =
      "{\"set\":{\"name\":\"Quandel (invented)\"},\"supply\":{\"nominalV\":9}}";

  @Test
  void readsWritesAndTakesOutEntries() throws Exception {
    SheetEntries entries = SheetEntries.of(SMALL);
    entries.set("supply.fuseA", SheetField.Kind.NUMBER, "0,5");
    entries.set("rail2.nominalV", SheetField.Kind.NUMBER, "\u22124.5");
    entries.set("rail1.nominalV", SheetField.Kind.NUMBER, "8");
    entries.set("rules.short.onDelayMs", SheetField.Kind.NUMBER, "150");
    entries.set("supply.look", SheetField.Kind.FLAG, "false");
    assertThat(entries.problem()).isNull();
    JsonNode json = new ObjectMapper().readTree(entries.json());
    assertThat(json.at("/supply/fuseA").asDouble()).isEqualTo(0.5);
    assertThat(json.at("/supply/look").isBoolean()).isTrue();
    assertThat(json.at("/rails/0/input").asInt()).isEqualTo(1);
    assertThat(json.at("/rails/1/nominalV").asDouble()).isEqualTo(-4.5);
    assertThat(json.at("/rules/short/onDelayMs").asInt()).isEqualTo(150);
    entries.set("rail1.nominalV", SheetField.Kind.NUMBER, "");
    entries.set("rail2.nominalV", SheetField.Kind.NUMBER, " ");
    entries.set("rules.short.onDelayMs", SheetField.Kind.NUMBER, "");
    JsonNode less = new ObjectMapper().readTree(entries.json());
    assertThat(less.has("rails")).isFalse();
    assertThat(less.has("rules")).isFalse();
  }

  @Test
  void saysWhatIsTakenForAnEmptyEntry() {
    SheetEntries entries = SheetEntries.of(SMALL);
    assertThat(entries.whenEmpty("supply.maxV")).startsWith("10.3");
    entries.set("supply.fuseA", SheetField.Kind.NUMBER, "1");
    assertThat(entries.whenEmpty("limits.runningA")).isEqualTo("0.8");
    assertThat(entries.value("limits.runningA")).isEmpty();
  }

  @Test
  void saysWhereAProblemIs() {
    SheetEntries entries = SheetEntries.of(SMALL);
    entries.set("supply.nominalV", SheetField.Kind.NUMBER, "90");
    assertThat(entries.problemPlace()).isEqualTo("supply.nominalV");
    assertThat(entries.problem().remedy().english()).contains("60");
    entries.set("supply.nominalV", SheetField.Kind.NUMBER, "9");
    entries.set("rail3.toleranceX", SheetField.Kind.NUMBER, "9");
    assertThat(entries.problemPlace()).startsWith("rail3");
    SheetEntries words = SheetEntries.of(SMALL);
    words.set("supply.fuseA", SheetField.Kind.NUMBER, "one");
    assertThat(words.problemPlace()).isEqualTo("supply.fuseA");
  }

  @Test
  void keepsWhatTheFormDoesNotShow() {
    String json =
        SMALL.replace("}}", "},\"unknownWires\":[{\"name\":\"W3\",\"places\":[\"P1\",\"P7\"]}]}");
    SheetEntries entries = SheetEntries.of(json);
    entries.set("supply.fuseA", SheetField.Kind.NUMBER, "1");
    assertThat(entries.problem()).isNull();
    assertThat(entries.json()).contains("unknownWires").contains("P7");
  }

  /** Every entry of the published schema has its place in the form, and words in the bundle. */
  @Test
  void theFormHoldsEveryEntryOfTheSchema() throws Exception {
    JsonNode schema = new ObjectMapper().readTree(new File("../schemas/job-sheet.schema.json"));
    List<String> places = new ArrayList<>();
    Words words = new Words(Locale.ENGLISH);
    for (FormSections.Section section : FormSections.all()) {
      for (FormSections.Entry entry : section.entries()) {
        places.add(entry.place());
        assertThat(words.get(entry.wordsKey())).isNotBlank();
        for (String choice : entry.field().choices()) {
          assertThat(words.get("choice." + choice)).isNotBlank();
        }
      }
    }
    for (String part : List.of("set", "supply", "limits", "levels")) {
      List<String> keys = keys(schema, schema.at("/properties/" + part));
      assertThat(keys).isNotEmpty();
      keys.forEach(key -> assertThat(places).contains(part + "." + key));
    }
    List<String> rail = keys(schema, schema.at("/properties/rails/items"));
    assertThat(rail).contains("nominalV");
    rail.remove("input");
    rail.forEach(key -> assertThat(places).contains("rail1." + key, "rail3." + key));
    for (RuleId rule : RuleId.values()) {
      for (FormSections.Entry entry : FormSections.of(rule)) {
        assertThat(words.get(entry.wordsKey())).as(entry.place()).isNotBlank();
      }
    }
  }

  private static List<String> keys(JsonNode schema, JsonNode part) {
    JsonNode at = part;
    while (at.has("$ref")) {
      at = schema.at(at.get("$ref").asText().substring(1));
    }
    List<String> keys = new ArrayList<>();
    at.path("properties")
        .properties()
        .forEach(
            each -> {
              // Lists stay as they are and have views of their own.
              if (!isList(schema, each.getValue())) {
                keys.add(each.getKey());
              }
            });
    return keys;
  }

  private static boolean isList(JsonNode schema, JsonNode part) {
    JsonNode at = part.has("$ref") ? schema.at(part.get("$ref").asText().substring(1)) : part;
    return "array".equals(at.path("type").asText());
  }

  @Test
  void everyInventedSetsSheetGoesThroughTheFormUnchanged() throws Exception {
    for (String scenario : Scenarios.names()) {
      String json = Scenarios.sheetJson(scenario);
      ObjectMapper mapper = new ObjectMapper();
      assertThat(mapper.readTree(SheetEntries.of(json).json())).isEqualTo(mapper.readTree(json));
    }
  }
}
