package firstamp.cli;

import static firstamp.cli.GermanCommandsTest.allGerman;
import static firstamp.cli.GermanCommandsTest.german;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** With --language de, what a sheet leads to and why a file is refused is German too. */
class GermanFilesTest {
  @TempDir private static Path folder;

  @Test
  void refusesASheetInGerman() throws Exception {
    Path sheet = folder.resolve("s.json");
    for (String text :
        List.of("{", "{\"set\":{\"name\":\"x\"}}", "{\"set\":{\"name\":\"x\"},\"suply\":{}}")) {
      Files.writeString(sheet, text);
      allGerman(german("sheet", "check", sheet.toString()));
    }
  }

  /** All that a sheet can make the program watch, what it does not, and every warning. */
  @Test
  void checksASheetInGerman() throws Exception {
    Path sheet = folder.resolve("check.json");
    String rails =
        "\"rails\":[{\"input\":1,\"name\":\"B1\",\"nominalV\":8,\"overV\":9,\"rippleMaxVrms\":0.02,"
            + "\"capacitanceUf\":1000,\"rectifier\":\"full\"},{\"input\":2,\"name\":\"B2\"}]";
    for (String text :
        List.of(
            "\"set\":{\"name\":\"x\"},\"supply\":{\"nominalV\":12}",
            "\"set\":{\"name\":\"x\",\"valveRectifier\":true},\"supply\":{\"nominalV\":12,\"fuseA\":1,"
                + "\"limitA\":1.2,\"through\":\"variable-transformer\",\"capacitanceUf\":4700},"
                + "\"limits\":{\"inrushA\":8,\"runningA\":1.5,\"i2tA2s\":0.6,\"inrushMs\":1000},"
                + rails
                + ",\"levels\":{\"expectedDb\":-40,\"marginDb\":6},\"rules\":{\"hum\":{\"aboveDbv\":-60},"
                + "\"short\":{\"enabled\":false},\"current-creep\":{\"overAPerMin\":0.01},"
                + "\"output-offset\":{\"input\":3}}",
            "\"set\":{\"name\":\"x\"},\"supply\":{\"nominalV\":24,\"limitA\":0.1,\"fuseA\":1,"
                + "\"through\":\"lamp\",\"look\":false},\"levels\":{},"
                + rails,
            "\"set\":{\"name\":\"x\"},\"supply\":{\"nominalV\":12},\"limits\":{\"runningA\":0.0012}")) {
      Files.writeString(sheet, "{" + text + "}");
      List<String> lines = german("sheet", "check", sheet.toString());
      allGerman(lines);
      allGerman(german("sheet", "check", sheet.toString(), "--reduced"));
      String one = String.join("\n", lines);
      assertThat(one)
          .as(text)
          .containsPattern("Der Messkasten schaltet selbst ab|erwartet wird: 0,0016 bis 12,4 A");
    }
  }

  /** Waveform, front-end and state files, each with something wrong; ; stands for a new line. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "demo --headless --waveform|t_s,supply_A;1,1",
        "demo --headless --waveform|t_s,supply_A;0,x",
        "demo --headless --waveform|t_s,supply_A;0,1,2",
        "demo --headless --waveform|t_s,supply_A",
        "demo --headless --waveform|t_s,rail4_V;0,1",
        "demo --headless --waveform|supply_A;0",
        "demo --headless --waveform healthy.csv --front-end|{",
        "demo --headless --waveform healthy.csv --front-end|{\"decayMs\":0}",
        "demo --headless --waveform healthy.csv --front-end|{\"chassisClip\":1}",
        "demo --headless --waveform healthy.csv --front-end|{\"look\":{\"loadohm\":1}}",
        "demo --headless --waveform healthy.csv --front-end|{\"channels\":{\"I\":{\"atZero\":0}}}",
        "demo --headless --waveform healthy.csv --front-end|{\"at\":[{\"button\":true}]}",
        "locate|{",
        "locate|[]",
        "locate|{\"locate\":2}",
        "locate|{\"locate\":1,\"nmae\":\"x\"}",
        "locate|{\"locate\":1,\"modes\":7}",
        "locate|{\"locate\":1,\"name\":\"x\",\"modes\":[],\"points\":[],\"joints\":[]}",
        "locate|{\"locate\":1,\"points\":[{\"name\":\"p\",\"effort\":1000}]}",
        "trial|{\"trial\":1}",
        "trial|{\"trial\":1,\"set\":{\"name\":\"x\",\"chassis\":\"up\",\"supplyV\":9,\"runningA\":1}}",
        "trial|{\"trial\":1,\"set\":{\"name\":\"x\"}}"
      })
  void refusesAFileInGerman(String command, String text) throws Exception {
    Path good = folder.resolve("healthy.csv");
    Files.writeString(good, "t_s,supply_A\n0,0\n1,0.1\n");
    Path file = folder.resolve("refused");
    Files.writeString(file, text.replace(';', '\n'));
    String line = command.replace("healthy.csv", good.toString()) + " " + file;
    List<String> lines = german(line.split(" "));
    allGerman(lines);
    assertThat(String.join("\n", lines)).containsPattern("erwartet|fehlt|braucht|JSON");
  }
}
