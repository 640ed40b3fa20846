package firstamp.cli.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import firstamp.cli.CommandRunner;
import firstamp.cli.JsonSchemas;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TrialCommandTest {
  @TempDir Path folder;

  private CommandRunner.Result run(String... options) {
    String[] all = new String[options.length + 2];
    all[0] = "trial";
    all[1] = folder.resolve("wires.json").toString();
    System.arraycopy(options, 0, all, 2, options.length);
    return CommandRunner.run(all);
  }

  @Test
  void examplesEndInTheirVerdicts() {
    CommandRunner.Result lead = CommandRunner.run("trial", "--example", "screened-lead", "--json");
    assertThat(lead.exitCode()).as(lead.err()).isZero();
    List<JsonNode> lines = lead.json("wire");
    lines.forEach(line -> assertThat(JsonSchemas.against(line)).as("%s", line).isEmpty());
    assertThat(lines.get(lines.size() - 1).path("state").asText()).isEqualTo("belongs");

    CommandRunner.Result radio = CommandRunner.run("trial", "--example", "cotton-leads", "--json");
    assertThat(radio.exitCode()).as(radio.err()).isZero();
    radio.json().forEach(line -> assertThat(JsonSchemas.against(line)).as("%s", line).isEmpty());
    assertThat(radio.out().toString()).contains("Do not power");
  }

  @Test
  void typedChecksLeadToATrialAndBack() {
    assertThat(run("--new", "screened-lead").out().get(0)).startsWith("Supply off");
    run("--wire", "W3", "--place", "screen tag", "--ohm", "47000");
    CommandRunner.Result tested =
        run("--wire", "W3", "--volts-alone", "1.4", "--volts-loaded", "0.2");
    assertThat(tested.exitCode()).as(tested.err()).isZero();
    assertThat(tested.out().get(0)).startsWith("Try W3 at ");
    CommandRunner.Result fits =
        run("--place", "preamp input", "--verdict", "better", "--figure", "level", "--json");
    assertThat(fits.json().get(0).path("state").asText()).isEqualTo("fits");
    CommandRunner.Result back = run("--undo", "--json");
    assertThat(back.json().get(0).path("state").asText()).isEqualTo("try");
    assertThat(back.json().get(0).path("next").path("worstA").asDouble()).isEqualTo(0.012);
  }

  @Test
  void saysWhatIsWrong() {
    assertThat(run().exitCode()).isEqualTo(66);
    run("--new", "screened-lead");
    CommandRunner.Result unknown = run("--wire", "W9");
    assertThat(unknown.exitCode()).isEqualTo(64);
    assertThat(unknown.err()).contains("W9").contains("W3");
    assertThat(run("--place", "B1 tag", "--verdict", "good").exitCode()).isEqualTo(64);
    assertThat(run("--clue", "reach").err()).contains("--place");
  }
}
