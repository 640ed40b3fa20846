package firstamp.worlds;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Writes a job sheet as its owner would: what stands on the set and what he measured. */
final class SheetWords {
  private final List<String> set = new ArrayList<>();
  private final List<String> supply = new ArrayList<>();
  private final List<String> rails = new ArrayList<>();
  private final List<String> levels = new ArrayList<>();

  SheetWords(String name, double nominalV) {
    set.add("\"name\":\"" + name + "\"");
    supply(String.format(Locale.ROOT, "\"nominalV\":%.4g", nominalV));
  }

  SheetWords set(String more) {
    set.add(more);
    return this;
  }

  SheetWords supply(String more) {
    supply.add(more);
    return this;
  }

  SheetWords supply(String key, double value) {
    return supply(String.format(Locale.ROOT, "\"%s\":%.3g", key, value));
  }

  SheetWords rail(int input, double nominalV, String more) {
    rails.add(
        String.format(
            Locale.ROOT,
            "{\"input\":%d,\"name\":\"B%d\",\"nominalV\":%.3g%s}",
            input,
            input,
            nominalV,
            more));
    return this;
  }

  SheetWords level(String key, double value) {
    levels.add(String.format(Locale.ROOT, "\"%s\":%.4g", key, value));
    return this;
  }

  String json() {
    StringBuilder out =
        new StringBuilder(
            "{\"sheet\":1,\"set\":{"
                + String.join(",", set)
                + "},\"supply\":{"
                + String.join(",", supply)
                + "}");
    if (!rails.isEmpty()) {
      out.append(",\"rails\":[").append(String.join(",", rails)).append("]");
    }
    if (!levels.isEmpty()) {
      out.append(",\"levels\":{").append(String.join(",", levels)).append("}");
    }
    return out.append("}").toString();
  }
}
