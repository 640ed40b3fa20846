package firstamp.emulate.wave;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import firstamp.emulate.bench.FrontEnd;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Messages of bad waveform and front-end files: file, line, field, what was expected. */
final class WaveformErrorsTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "t_s,supply_A;0,NaN|w:2: supply_A is \"NaN\"; expected a finite number",
        "t_s,supply_A;0,1e999|w:2: supply_A is \"1e999\"; expected a finite number",
        "t_s,supply_A;0,1;0,2|w:3: t_s is 0; expected more than in the row before",
        "t_s,supply_A;1,1|w:2: t_s is 1; expected 0 in the first row (the switch closes)",
        "t_s,supply_A;0,1,2|w:2: 3 fields; expected 2 as in the header",
        "t_s,supply_A,supply_A;0,1,2|w:1: column supply_A twice; expected each name once",
        "supply_A;0|w:1: column 1 is \"supply_A\"; expected t_s as the first column and only there",
        "t_s,rail4_V;0,1|w:1: unknown column \"rail4_V\"; expected one of t_s supply_V supply_A"
            + " rail1_V rail2_V rail3_V head_V meter_V",
        "t_s,supply_A|w:1: no rows; expected a header and at least one row of numbers",
      })
  void waveformErrorsNameLineAndColumn(String text, String message) {
    WaveformException thrown =
        assertThrows(
            WaveformException.class, () -> WaveformFile.parse(text.replace(';', '\n'), "w"));
    assertEquals(message, thrown.getMessage());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "{\"decayMs\":0}|f:1: decayMs is 0; expected a number from 0.001 to 10000000",
        "{;\"look\":{\"loadohm\":1}}|f:2: unknown key look.loadohm; expected supplyV, loadOhm,"
            + " loadUf",
        "{\"chassisClip\":1}|f:1: chassisClip is 1; expected true or false",
        "{\"channels\":{\"I\":{\"atZero\":0}}}|f:1: channels.I incomplete; expected both atZero and"
            + " atFull, and not the same",
        "{\"channels\":{\"H\":{\"unit\":\"A\"}}}|f:1: channels.H.unit is \"A\"; expected one of V,"
            + " mV, uV, nV",
        "{\"at\":[{\"button\":true}]}|f:1: at[] without ms; expected the time of the change in"
            + " milliseconds",
      })
  void frontEndErrorsNameLineAndField(String text, String message) {
    WaveformException thrown =
        assertThrows(
            WaveformException.class, () -> FrontEndFile.parse(text.replace(';', '\n'), "f", 12));
    assertEquals(message, thrown.getMessage());
  }

  @Test
  void anExportedTableIsReadFromClosingOn() throws Exception {
    WaveformFile file =
        WaveformFile.parse(
            "t_s,supply_V,supply_A,rail1_V,rail2_V,supply_A_highest\n"
                + "-0.01,0,0,0,,0\n0,12,1,2,,1.8\n0.01,12,0.5,,,0.6\n",
            "w");
    assertEquals(1, file.at(WaveformFile.SUPPLY_A, 0));
    assertEquals(0.5, file.at(WaveformFile.SUPPLY_A, 0.01));
    assertEquals(Double.NaN, file.at(WaveformFile.RAIL1_V, 0.01), "the clip came off");
    assertEquals(false, file.has(WaveformFile.RAIL1_V + 1), "no clip at all");
  }

  @Test
  void unitsScaleTheEnds() throws Exception {
    FrontEnd front =
        FrontEndFile.parse(
            "{\"channels\":{\"H\":{\"unit\":\"mV\",\"atZero\":-20,\"atFull\":20}}}", "f", 9);
    assertEquals(
        new firstamp.protocol.values.ChannelScale(-20_000_000, 20_000_000),
        front.box().inputs().stream().map(firstamp.emulate.box.BoxInput::scale).toList().get(6));
    assertEquals(9, front.lookSupplyV());
  }

  @Test
  void quotedFieldsAndBothLineEndsAreRead() throws Exception {
    WaveformFile file = WaveformFile.parse("\"t_s\",\"supply_A\"\r\n0,1\r\n\"1\",3\n", "w");
    assertEquals(2, file.at(WaveformFile.SUPPLY_A, 0.5), 1e-12);
    assertEquals(3, file.at(WaveformFile.SUPPLY_A, 7), 1e-12);
  }
}
