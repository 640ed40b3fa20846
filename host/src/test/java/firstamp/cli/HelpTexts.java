package firstamp.cli;

import java.util.LinkedHashMap;
import java.util.Map;
import picocli.CommandLine;

/** The help of every command, as it is printed. */
public final class HelpTexts {
  private HelpTexts() {}

  /** Name of the command and its help. */
  public static Map<String, String> all() {
    Map<String, String> texts = new LinkedHashMap<>();
    add("firstamp", Main.commandLine(), texts);
    return texts;
  }

  private static void add(String name, CommandLine line, Map<String, String> texts) {
    texts.put(name, line.getUsageMessage(CommandLine.Help.Ansi.OFF).replaceAll("\\s+", " "));
    line.getSubcommands().forEach((sub, command) -> add(name + " " + sub, command, texts));
  }
}
