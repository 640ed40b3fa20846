package firstamp.analysis.calibrate;

import firstamp.model.text.Explained;
import firstamp.model.text.Worded;

/** Points that no scale can be made of; the message says which, and what to try. */
public final class CalibrationRefused extends Exception implements Explained {
  private static final long serialVersionUID = 1L;

  private final transient Worded words;

  CalibrationRefused(String key, Object... values) {
    this(Worded.of("firstamp.analysis.calibrate.points", key, values));
  }

  private CalibrationRefused(Worded words) {
    super(words.english());
    this.words = words;
  }

  @Override
  public Worded words() {
    return words;
  }
}
