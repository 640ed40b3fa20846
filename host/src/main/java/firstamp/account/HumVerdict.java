package firstamp.account;

import firstamp.analysis.figures.Evidence;
import firstamp.analysis.figures.FigureText;
import firstamp.analysis.spectrum.HumPattern;
import firstamp.model.JobSheet;
import firstamp.model.Summary;
import firstamp.model.text.Wording.Phrase;
import java.util.List;
import java.util.Locale;

/**
 * Sentences about hum: what its pattern points to, and how a change affected it.
 *
 * <p>That 50 Hz and odd multiples point to heaters, fields and grounds, 100 Hz to a rectifier's
 * ripple and a buzz to sparks or a dry filter, and the decibels and shares below: common practice,
 * no source.
 */
final class HumVerdict {
  private static final double SAME_HUM_DB = 6;
  private static final double HUM_DBV = -75;
  private static final double CHANGED_DB = 3;
  private static final int LOOK_AT_IT = 5;

  /** Most of the hum in step with a rail: that rail first. */
  private static final double IN_STEP = 0.5;

  private final JobSheet sheet;
  private final Evidence evidence;
  private final VerdictWriter writer;

  HumVerdict(JobSheet sheet, Evidence evidence, VerdictWriter writer) {
    this.sheet = sheet;
    this.evidence = evidence;
    this.writer = writer;
  }

  void judge(Summary.LevelFigures levels) {
    changes();
    if (levels.humDbv() == null) {
      return;
    }
    Double before = evidence.heard().humBeforeDbv();
    if (before != null && before > levels.humDbv() - SAME_HUM_DB) {
      writer.say(5, "hum.before", 0, FigureText.decibels(before, "dBV"));
      return;
    }
    boolean loud = levels.humDbv() > HUM_DBV;
    String level = FigureText.decibels(levels.humDbv(), "dBV");
    Evidence.InStep closest = closest();
    if (loud && closest != null && closest.share() >= IN_STEP) {
      Evidence.RailRipple ripple = evidence.ripple(closest.rail());
      writer.say(
          LOOK_AT_IT,
          "hum.in-step",
          closest.rail(),
          level,
          percent(closest.share()),
          sheet.rail(closest.rail()).name(),
          FigureText.digits(ripple.toneHz()) + " Hz");
    } else if (loud) {
      // Weak hum is reported as a figure: no advice for a set whose hum is ordinary.
      pattern(level, closest);
    }
  }

  private Evidence.InStep closest() {
    Evidence.InStep closest = null;
    for (Evidence.InStep one : evidence.heard().inStep()) {
      boolean ripples = evidence.ripple(one.rail()) != null;
      if (ripples && (closest == null || one.share() > closest.share())) {
        closest = one;
      }
    }
    return closest;
  }

  private void pattern(String level, Evidence.InStep closest) {
    int mainsHz = evidence.heard().headHumHz();
    HumPattern.Kind kind = evidence.heard().pattern();
    String mains = mainsHz + " Hz";
    switch (kind == null ? HumPattern.Kind.MIXED : kind) {
      case MAINS -> writer.say(LOOK_AT_IT, "hum.mains", 0, level, mains);
      case TWICE -> writer.say(LOOK_AT_IT, "hum.twice", 0, level, 2 * mainsHz + " Hz");
      case BUZZ -> writer.say(LOOK_AT_IT, "hum.buzz", 0, level, 3 * mainsHz + " Hz");
      default -> writer.say(LOOK_AT_IT, "hum.seen", 0, level, mains);
    }
    if (closest != null) {
      writer.say(
          LOOK_AT_IT,
          "hum.not-in-step",
          closest.rail(),
          sheet.rail(closest.rail()).name(),
          percent(closest.share()));
    }
  }

  /** Before and after each change: the charger pulled, the lamp moved. */
  private void changes() {
    List<Evidence.Stretch> stretches = evidence.stretches();
    for (int k = 1; k < stretches.size(); k++) {
      if (!stretches.get(k).change()) {
        continue;
      }
      Double one = hum(stretches.get(k - 1));
      Double two = hum(stretches.get(k));
      String mark = stretches.get(k).mark();
      Object name =
          mark == null || mark.isBlank()
              ? new Phrase("change", String.valueOf(stretches.get(k).number()))
              : mark;
      if (one != null && two != null && Math.abs(one - two) > CHANGED_DB) {
        writer.say(
            4,
            two < one ? "hum.fell" : "hum.rose",
            0,
            name,
            FigureText.decibels(one, "dBV"),
            FigureText.decibels(two, "dBV"));
      } else if (one != null && two == null && readable(stretches.get(k))) {
        writer.say(4, "hum.gone", 0, name, FigureText.decibels(one, "dBV"));
      }
    }
  }

  private static Double hum(Evidence.Stretch stretch) {
    Summary.LevelFigures levels = stretch.evidence().levels();
    return levels == null ? null : levels.humDbv();
  }

  /** Whether any window after the change was fit for reading hum. */
  private static boolean readable(Evidence.Stretch stretch) {
    return stretch.evidence().heard().headHumHz() != null;
  }

  private static String percent(double share) {
    return String.format(Locale.ROOT, "%.0f %%", 100 * share);
  }
}
