package firstamp.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A set behind the simulated chip, and the command line that watches it over a real port. */
abstract class ChipCase {
  static final String SHEET =
      "{\"sheet\":1,\"set\":{\"name\":\"Set behind the chip (invented)\",\"kind\":\"recorder\",\"chassis\":\"negative\"},"
          + "\"supply\":{\"kind\":\"bench\",\"nominalV\":12,\"minV\":5,\"maxV\":13.5,\"limitA\":6,\"fuseA\":5},"
          + "\"limits\":{\"inrushA\":4.5,\"inrushMs\":60,\"runningA\":1.0,\"i2tA2s\":0.5},"
          + "\"rails\":[{\"input\":1,\"name\":\"B1\",\"nominalV\":8.2,\"settleMs\":300}]}";
  static final String STEADY =
      "t_s,supply_V,supply_A,rail1_V\n0,12,0,0\n0.001,11.8,1.8,0.5\n0.05,11.95,0.5,6\n0.2,11.97,0.12,8.2\n30,11.97,0.12,8.2\n";
  static final String SHORT_AT_1_S =
      "t_s,supply_V,supply_A,rail1_V\n0,12,0,0\n0.001,11.8,1.8,0.5\n0.05,11.95,0.5,6\n0.2,11.97,0.12,8.2\n"
          + "1.0,11.97,0.12,8.2\n1.000001,6,5,7\n5,6,5,2\n";

  @TempDir Path folder;
  Path sheet;

  @BeforeEach
  void writeSheet() throws IOException {
    ChipRig.assumeTools();
    sheet = Files.writeString(folder.resolve("sheet.json"), SHEET);
  }

  Path waveform(String text) throws IOException {
    return Files.writeString(folder.resolve("waveform.csv"), text);
  }

  List<String> watch(ChipRig chip, Path log, String... more) {
    List<String> arguments =
        new ArrayList<>(
            List.of(
                "watch",
                "--port",
                chip.port(),
                "--sheet",
                sheet.toString(),
                "--accept",
                "floating-supply,above-60,tape-out",
                "--headless",
                "--json",
                "--countdown",
                "0",
                "--log",
                log.toString()));
    arguments.addAll(List.of(more));
    return arguments;
  }

  static CommandRunner.Result run(List<String> arguments) {
    return CommandRunner.run(arguments.toArray(String[]::new));
  }
}
