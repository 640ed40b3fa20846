package firstamp.emulate.wave;

import firstamp.model.text.Explained;
import firstamp.model.text.Worded;
import firstamp.model.text.Wording.Phrase;
import java.io.IOException;

/** A waveform or front-end file that does not say what it must; names file, line and field. */
public final class WaveformException extends IOException implements Explained {
  private static final long serialVersionUID = 1L;

  private final transient Worded words;

  private WaveformException(Worded words) {
    super(words.english());
    this.words = words;
  }

  static WaveformException at(String name, int line, Object what) {
    return new WaveformException(say("at", name, String.valueOf(line), what));
  }

  static WaveformException of(String name, Phrase what) {
    return new WaveformException(say("file", name, what));
  }

  private static Worded say(String key, Object... values) {
    return Worded.of("firstamp.emulate.wave.problems", key, values);
  }

  @Override
  public Worded words() {
    return words;
  }
}
