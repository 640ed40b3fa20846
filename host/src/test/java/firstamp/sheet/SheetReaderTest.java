package firstamp.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import firstamp.model.JobSheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SheetReaderTest {
  @Test
  void readsTheExampleAsStated() throws SheetException {
    JobSheet sheet = SheetReader.parse("larch.json", Sheets.DICTATION_UNIT).sheet();
    assertThat(sheet.set().name()).isEqualTo("Larch D2 dictation unit (invented)");
    assertThat(sheet.supply().nominalV()).isEqualTo(12);
    assertThat(sheet.limits().i2tA2s()).isEqualTo(0.3);
    assertThat(sheet.rail(1).overV()).isEqualTo(9.8);
    assertThat(sheet.rail(2)).isNull();
    assertThat(sheet.levels().expectedDb()).isEqualTo(38);
    assertThat(sheet.rules().get("short").numbers()).containsEntry("belowOhm", 2.5);
    assertThat(sheet.rules().get("short").latch()).isNull();
  }

  @Test
  void needsOnlyANameAndVolts() throws SheetException {
    JobSheet sheet = SheetReader.parse("s.json", Sheets.minimal("")).sheet();
    assertThat(sheet.sheet()).isEqualTo(1);
    assertThat(sheet.limits()).isNull();
    assertThat(sheet.rails()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          ,"limits":{"runingA":1}                     | limits.runingA | unknown key | runningA
          ,"limit":{}                                 | limit | unknown key | limits
          ,"rules":{"over-curent":{}}                 | rules.over-curent | unknown key | over-current
          ,"rules":{"short":{"belowohm":2}}           | rules.short.belowohm | unknown key | belowOhm
          ,"limits":{"runningA":NaN}                  | limits.runningA | NaN | 0.001 to 100 A
          ,"limits":{"runningA":Infinity}             | limits.runningA | Infinity | 0.001 to 100 A
          ,"limits":{"runningA":1e999}                | limits.runningA | Infinity | 0.001 to 100 A
          ,"limits":{"runningA":0}                    | limits.runningA | 0 | 0.001 to 100 A
          ,"limits":{"runningA":-1}                   | limits.runningA | -1 | 0.001 to 100 A
          ,"limits":{"runningA":"1"}                  | limits.runningA | "1" | without quotes
          ,"limits":{"runningA":null}                 | limits.runningA | null | a number
          ,"rails":[{"input":1,"tolerancePercent":101}] | rails[0].tolerancePercent | 101 | 0.1 to 100 percent
          ,"rails":[{"input":4}]                      | rails[0].input | 4 | 1 to 3
          ,"rails":[{"input":1.5}]                    | rails[0].input | 1.5 | whole number
          ,"rails":[{"input":1},{"input":1}]          | rails[1].input | 1 | no other rail
          ,"rails":[{"input":1,"nominalV":0}]         | rails[0].nominalV | 0 | at least 0.1 V
          ,"rails":[{"input":1,"nominalV":9,"overV":8}] | rails[0].overV | 8 | over nominalV 9 V
          ,"rails":[{"name":"B1"}]                    | rails[0].input | missing | "input":1
          ,"rails":{"input":1}                        | rails | an object | square brackets
          ,"levels":[]                                | levels | a list | braces
          ,"rules":{"short":{"action":"of"}}          | rules.short.action | "of" | Did you mean "off"
          ,"rules":{"short":{"enabled":1}}            | rules.short.enabled | 1 | true or false
          ,"sheet":2                                  | sheet | 2 | newer version
          ,"rules":{"short":{"action":"beep"}}        | rules.short.action | beep | Did you mean "alarm"
          ,"rules":{"short":{"priority":"Urgent"}}    | rules.short.priority | Urgent | Did you mean "high"
          """)
  void refusesByFieldValueAndRange(String more, String field, String value, String words) {
    SheetException problem =
        catchThrowableOfType(
            SheetException.class, () -> SheetReader.parse("s.json", Sheets.minimal(more)));
    assertThat(problem).as(more).isNotNull();
    assertThat(problem.field()).isEqualTo(field);
    assertThat(problem.value().english()).contains(value);
    assertThat(problem.getMessage()).startsWith("s.json, line 2, column ").contains(words);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          {"set":{"name":"S"},"supply":{"nominalV":12},}   | 1
          {"set":{"name":"S"},"supply":{"nominalV":12}} {}  | 1
          {"set":{"name":"S","name":"T"},"supply":{"nominalV":12}} | 1
          {"set":{"name":"S"},"supply":{"nominalV":12}      | 1
          []                                               | 1
          {"set":{"name":""},"supply":{"nominalV":12}}      | 1
          {"set":{"name":"S"}}                              | 1
          {"supply":{"nominalV":12}}                        | 1
          {"set":{"name":"S"},"supply":{}}                  | 1
          {"set":{"name":"S"},"supply":{"nominalV":12,"minV":12}} | 1
          {"set":{"name":"S"},"supply":{"nominalV":12,"maxV":12}} | 1
          """)
  void refusesWhatIsNoSheet(String text, int line) {
    SheetException problem =
        catchThrowableOfType(SheetException.class, () -> SheetReader.parse("s.json", text));
    assertThat(problem).as(text).isNotNull();
    assertThat(problem.line()).isEqualTo(line);
    assertThat(problem.remedy().english()).isNotBlank();
  }

  @Test
  void boundsDepthAndSize() {
    String deep = "[".repeat(40) + "]".repeat(40);
    assertThat(catchThrowableOfType(SheetException.class, () -> SheetReader.parse("s.json", deep)))
        .isNotNull();
    String large = " ".repeat(1_000_001);
    assertThat(catchThrowableOfType(SheetException.class, () -> SheetReader.parse("s.json", large)))
        .hasMessageContaining("at most 1000000");
  }

  @Test
  void namesLineAndColumn() {
    String text = "{\"set\":{\"name\":\"Set\"},\n\"supply\":{\n  \"nominalV\": -12}}";
    SheetException problem =
        catchThrowableOfType(SheetException.class, () -> SheetReader.parse("s.json", text));
    assertThat(problem.line()).isEqualTo(3);
    assertThat(problem.column()).isEqualTo(15);
  }

  @Test
  void writesWhatItReads() throws SheetException {
    JobSheet sheet = SheetReader.parse("larch.json", Sheets.DICTATION_UNIT).sheet();
    String text = SheetWriter.write(sheet);
    assertThat(SheetReader.parse("again.json", text).sheet()).isEqualTo(sheet);
    assertThat(text).contains("\"nominalV\" : 12,").contains("\"nominalV\" : 8.2,");
    JobSheet filled = Defaults.fill(sheet);
    assertThat(SheetReader.parse("filled.json", SheetWriter.write(filled)).sheet())
        .isEqualTo(filled);
  }

  @Test
  void saysTheKindThatIsMeant() {
    for (String[] pair :
        new String[][] {
          {"radio", "receiver"}, {"calculator", "computer"}, {"recordr", "recorder"}
        }) {
      SheetException bad =
          catchThrowableOfType(
              SheetException.class,
              () ->
                  SheetReader.parse(
                      "s.json",
                      "{\"set\":{\"name\":\"S\",\"kind\":\""
                          + pair[0]
                          + "\"},\"supply\":{\"nominalV\":9}}"));
      assertThat(bad.remedy().english()).endsWith(". Did you mean \"" + pair[1] + "\"?");
    }
  }

  @Test
  void aSetAboveSixtyVoltsIsRefusedWithTheReason() {
    SheetException bad =
        catchThrowableOfType(
            SheetException.class,
            () ->
                SheetReader.parse(
                    "s.json", "{\"set\":{\"name\":\"S\"},\"supply\":{\"nominalV\":230}}"));
    assertThat(bad)
        .hasMessageContaining("supply.nominalV is 230, expected 0.5 to 60 V.")
        .hasMessageContaining("stays off the set");
  }
}
