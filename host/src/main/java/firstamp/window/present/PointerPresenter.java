package firstamp.window.present;

import firstamp.bench.Snapshot;
import firstamp.trend.Course;
import firstamp.window.words.Numbers;
import firstamp.window.words.Words;
import java.util.ArrayList;
import java.util.List;

/** Says the values at the pointer, and those from one moment to another, as a sentence. */
public final class PointerPresenter {
  private final Words words;
  private final Numbers numbers;

  public PointerPresenter(Words words, Numbers numbers) {
    this.words = words;
    this.numbers = numbers;
  }

  /** The values at a moment (of one column there). */
  public String at(Snapshot now, double ms, double columnMs) {
    double from = Math.floor(ms / columnMs) * columnMs;
    return words.get(
        "pointer.at",
        numbers.moment(ms - ReplayPresenter.zero(now)),
        values(now, from, from + columnMs));
  }

  /** The values from one moment to another. */
  public String span(Snapshot now, double oneMs, double otherMs) {
    double from = Math.min(oneMs, otherMs);
    double to = Math.max(oneMs, otherMs);
    double zero = ReplayPresenter.zero(now);
    return words.get(
        "pointer.span",
        numbers.moment(from - zero),
        numbers.moment(to - zero),
        numbers.moment(to - from),
        values(now, from, Math.max(to, from + Course.SLOT_MS)));
  }

  private String values(Snapshot now, double fromMs, double toMs) {
    List<String> parts = new ArrayList<>();
    add(parts, now, Course.Quantity.SUPPLY_A, words.get("strip.current"), fromMs, toMs);
    add(parts, now, Course.Quantity.SUPPLY_V, words.get("strip.volts"), fromMs, toMs);
    for (Snapshot.Rail rail : now.figures().rails()) {
      add(parts, now, Course.Quantity.ofRail(rail.input()), rail.name(), fromMs, toMs);
    }
    add(parts, now, Course.Quantity.METER_DBV, words.get("strip.meter"), fromMs, toMs);
    add(parts, now, Course.Quantity.HEAD_DBV, words.get("strip.head"), fromMs, toMs);
    return parts.isEmpty() ? words.get("figure.nothing") : String.join(", ", parts);
  }

  private void add(
      List<String> parts,
      Snapshot now,
      Course.Quantity quantity,
      String name,
      double fromMs,
      double toMs) {
    float[] low = new float[1];
    float[] high = new float[1];
    float[] mean = new float[1];
    now.course().columns(quantity, fromMs, toMs, 1, low, high, mean);
    if (Float.isNaN(mean[0])) {
      return;
    }
    String value = write(quantity, mean[0]).toString();
    String lowest = write(quantity, low[0]).number();
    String highest = write(quantity, high[0]).toString();
    parts.add(
        lowest.equals(write(quantity, high[0]).number())
            ? words.get("pointer.value", name, value)
            : words.get("pointer.range", name, value, lowest, highest));
  }

  private Numbers.Written write(Course.Quantity quantity, double value) {
    return switch (quantity) {
      case SUPPLY_A -> numbers.amps(value);
      case SUPPLY_V, RAIL1_V, RAIL2_V, RAIL3_V -> numbers.volts(value);
      case HEAD_DBV, METER_DBV -> numbers.decibels(value, "dBV");
    };
  }
}
