package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import firstamp.cli.output.Speech;
import firstamp.cli.run.RunOptions;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

/** The options about sound do what they say: the library turns an option over that begins "no". */
class SoundOptionTest {
  private static Boolean sound(String... arguments) {
    RunOptions options = new RunOptions(Speech.ENGLISH);
    new CommandLine(CommandLine.Model.CommandSpec.create().addMixin("run", mixin(options)))
        .parseArgs(arguments);
    return options.sound;
  }

  private static CommandLine.Model.CommandSpec mixin(RunOptions options) {
    return CommandLine.Model.CommandSpec.forAnnotatedObject(options);
  }

  @Test
  void noSoundIsSilent() {
    assertThat(sound("--no-sound")).isFalse();
  }

  @Test
  void soundIsHeard() {
    assertThat(sound("--sound")).isTrue();
  }

  @Test
  void withoutEitherTheCommandDecides() {
    assertThat(sound()).isNull();
  }
}
