package firstamp.window.present;

import firstamp.app.JobState;
import firstamp.window.words.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Words for where a job stands. */
public final class JobPresenter {
  private static final List<String> STATES = List.of("waits", "left", "done");

  /** Letters that fit into a line of the list. */
  private static final int LINE = 46;

  private final Words words;
  private final Words english;

  public JobPresenter(Words words) {
    this.words = words;
    this.english = new Words(Locale.ENGLISH);
  }

  /**
   * What the person said last about the job in a mark ("waits for the driver transistor", "left as
   * it is", "done"), in the person's language or in English; null = nothing.
   */
  public String stated(JobState job) {
    for (int at = job.said().size() - 1; at >= 0; at--) {
      String text = job.said().get(at).strip();
      for (String state : STATES) {
        String rest = rest(text, state);
        if (rest != null) {
          return words.get("job." + state, rest);
        }
      }
    }
    return null;
  }

  /** What follows the words that name a state; null if the text does not begin with them. */
  private String rest(String text, String state) {
    for (Words spoken : List.of(words, english)) {
      String begin = spoken.get("job.say." + state);
      boolean whole = text.equalsIgnoreCase(begin);
      boolean more =
          state.equals("waits") && text.regionMatches(true, 0, begin + " ", 0, begin.length() + 1);
      if (more || whole && !state.equals("waits")) {
        return text.substring(begin.length()).strip();
      }
    }
    return null;
  }

  /** All that is known, a line each; empty where nothing is. */
  List<String> lines(JobState job) {
    List<String> lines = new ArrayList<>();
    String stated = stated(job);
    if (stated != null) {
      lines.add(words.get("job.line", stated));
    }
    if (job.wires() > 0) {
      lines.add(words.get("job.wires", job.wires(), job.wiresTried(), job.wiresPlaced()));
    }
    if (job.coldChecks() > 0) {
      lines.add(words.get("job.coldChecks", job.coldChecks()));
    }
    if (job.knownGood() != null) {
      lines.add(words.get("job.knownGood", String.valueOf(job.knownGood())));
    }
    return lines;
  }

  /**
   * What the person said, or how far the wires are, in the few words that a line of the list holds.
   *
   * @param outcome of the latest power-up, in words
   * @return null where nothing is known
   */
  String brief(JobState job, String outcome) {
    String stated = stated(job);
    if (stated != null) {
      return stated.length() <= LINE ? stated : stated.substring(0, LINE - 1) + "\u2026";
    }
    return job.wires() > 0 ? words.get("job.brief", outcome, job.wiresPlaced(), job.wires()) : null;
  }
}
