package firstamp.cli;

import firstamp.cli.output.Speech;
import java.lang.reflect.Constructor;
import java.util.Arrays;
import picocli.CommandLine;

/** Makes the commands; one that has to speak is made with the language that was asked for. */
final class SpeakingFactory implements CommandLine.IFactory {
  private final CommandLine.IFactory usual = CommandLine.defaultFactory();
  private final Speech speech;

  SpeakingFactory(Speech speech) {
    this.speech = speech;
  }

  @Override
  public <K> K create(Class<K> type) throws Exception {
    for (Constructor<?> each : type.getDeclaredConstructors()) {
      if (Arrays.equals(each.getParameterTypes(), new Class<?>[] {Speech.class})) {
        each.setAccessible(true);
        return type.cast(each.newInstance(speech));
      }
    }
    return usual.create(type);
  }
}
