package firstamp.window.present;

import firstamp.analysis.figures.InrushExpected;
import firstamp.bench.LookScale;
import firstamp.bench.Snapshot;
import firstamp.model.Summary;
import firstamp.window.widgets.Tone;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What the first look through the resistor found, in words. */
public final class LookPresenter {
  private final Words words;
  private final Numbers numbers;

  public LookPresenter(Words words, Numbers numbers) {
    this.words = words;
    this.numbers = numbers;
  }

  /**
   * The card.
   *
   * @param tone of the finding
   * @param headline the finding
   * @param figures resistance and capacitance, large, each with its name
   * @param lines what the figures mean
   */
  public record LookView(Tone tone, String headline, List<Named> figures, List<String> lines) {}

  /**
   * A figure and what it is of.
   *
   * @param name in small
   * @param value in large
   */
  public record Named(String name, String value) {}

  /** The card of a snapshot; null before a look was made. */
  public LookView view(Snapshot now) {
    Summary.LookFigures look = now.findings().look();
    if (look == null) {
      return null;
    }
    List<Named> figures = new ArrayList<>();
    List<String> lines = new ArrayList<>();
    lines.add(words.getOr("firstlook." + look.result() + ".more", words.get("firstlook.other")));
    Double stepOhm = stepOhm(now);
    if (look.ohm() != null) {
      String said = numbers.ohms(look.ohm()).toString();
      figures.add(
          new Named(
              words.get("firstlook.ohm.name"),
              look.atMost() ? words.get("value.atMost", said) : said));
      lines.add(words.get("firstlook.ohm"));
    }
    if (look.uF() != null) {
      figures.add(
          new Named(
              words.get("firstlook.farad.name"),
              words.get("firstlook.about", numbers.microfarads(look.uF()))));
    } else if (look.supplyV() != null) {
      lines.add(words.get("firstlook.noFarad"));
    }
    if (look.supplyV() != null) {
      lines.add(words.get("firstlook.supply", numbers.volts(look.supplyV())));
    }
    String inrush = inrush(now);
    if (inrush != null) {
      lines.add(inrush);
    }
    if (stepOhm != null) {
      lines.add(
          words.get(
              "firstlook.step",
              numbers.fixed(now.beside().lookScale().stepV() * 1000, 0) + " mV",
              numbers.amps(lookA(now)),
              numbers.ohms(stepOhm)));
    }
    return new LookView(
        tone(look.result()),
        words.getOr("firstlook." + look.result(), look.result().toUpperCase(Locale.ROOT)),
        figures,
        lines);
  }

  /** The inrush to be expected; null = it has been, the switch stays open, or it is not known. */
  private String inrush(Snapshot now) {
    LookScale scale = now.beside().lookScale();
    InrushExpected expected = scale == null ? null : scale.inrush();
    if (expected == null
        || now.times().closedMs() != null
        || tone(now.findings().look().result()) == Tone.ALARM) {
      return null;
    }
    String ms = numbers.fixed(expected.ms(), expected.ms() < 10 ? 1 : 0) + " ms";
    return expected.limitA() == null
        ? words.get("firstlook.inrush", numbers.amps(expected.peakA()), ms)
        : words.get(
            "firstlook.inrushHeld",
            numbers.amps(expected.limitA()),
            ms,
            numbers.amps(expected.peakA()));
  }

  /** Whether a look was made that kept the switch open. */
  public static boolean keptOpen(Snapshot now) {
    return now.findings().look() != null
        && now.times().closedMs() == null
        && now.phase() == Snapshot.Phase.ENDED;
  }

  /** The current through resistor and set when nothing charges any more; null = not known. */
  private static Double lookA(Snapshot now) {
    LookScale scale = now.beside().lookScale();
    Double supplyV = now.findings().look().supplyV();
    if (scale == null || supplyV == null || now.findings().look().ohm() == null) {
      return null;
    }
    return supplyV / (scale.resistorOhm() + now.findings().look().ohm());
  }

  /** What one step of the volts input is in ohms here. */
  private static Double stepOhm(Snapshot now) {
    Double amps = lookA(now);
    return amps == null || !(amps > 0) ? null : (Double) (now.beside().lookScale().stepV() / amps);
  }

  private static Tone tone(String result) {
    return switch (result) {
      case "clear" -> Tone.CALM;
      case "skipped" -> Tone.PLAIN;
      case "low", "nothing-joined" -> Tone.CAUTION;
      default -> Tone.ALARM;
    };
  }
}
