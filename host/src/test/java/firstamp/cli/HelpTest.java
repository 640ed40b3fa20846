package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

/** Every command says what it does, with an example, and no text stumbles over a per cent sign. */
class HelpTest {
  private static List<CommandLine> all(CommandLine line) {
    List<CommandLine> found = new ArrayList<>();
    found.add(line);
    line.getSubcommands().values().forEach(below -> found.addAll(all(below)));
    return found;
  }

  @Test
  void everyCommandHelpsWithoutAWarning() {
    PrintStream before = System.err;
    ByteArrayOutputStream warnings = new ByteArrayOutputStream();
    System.setErr(new PrintStream(warnings, true, StandardCharsets.UTF_8));
    try {
      List<CommandLine> commands = all(Main.commandLine());
      assertThat(commands).hasSizeGreaterThan(18);
      for (CommandLine command : commands) {
        String help = command.getUsageMessage(CommandLine.Help.Ansi.OFF);
        assertThat(help)
            .as(command.getCommandName())
            .contains("Usage: firstamp")
            .contains("Examples:")
            .doesNotContain("%%");
      }
    } finally {
      System.setErr(before);
    }
    assertThat(warnings.toString(StandardCharsets.UTF_8)).isEmpty();
  }

  @Test
  void aCommandHelpsTheSameWhereItAloneIsRead() {
    CommandLine whole = Main.commandLine();
    for (String name : whole.getSubcommands().keySet()) {
      CommandLine alone = Main.lineFor(name, "--help");
      assertThat(alone.getSubcommands()).containsOnlyKeys(name);
      assertThat(helps(alone.getSubcommands().get(name)))
          .isEqualTo(helps(whole.getSubcommands().get(name)));
    }
    assertThat(Main.lineFor("dem").getSubcommands()).hasSameSizeAs(whole.getSubcommands());
  }

  private static List<String> helps(CommandLine line) {
    return all(line).stream().map(each -> each.getUsageMessage(CommandLine.Help.Ansi.OFF)).toList();
  }
}
