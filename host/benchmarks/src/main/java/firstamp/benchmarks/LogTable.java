package firstamp.benchmarks;

import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The figures as Markdown: the worst of the runs beside its limit and its target. */
final class LogTable {
  private final Map<String, Object> head;
  private final List<Map<String, Object>> runs;
  private final StringBuilder text = new StringBuilder();

  LogTable(Map<String, Object> head, List<Map<String, Object>> runs) {
    this.head = head;
    this.runs = runs;
  }

  String markdown() {
    line(
        "Commit %s, %s, %s; %s min of data, %s min for the other formats; each figure the worst of"
            + " %d runs.",
        head.get("commit"),
        head.get("date"),
        head.get("machine"),
        head.get("minutes"),
        head.get("otherMinutes"),
        runs.size());
    line("");
    line("| figure | measured | limit | target | |");
    line("|---|---|---|---|---|");
    small("bytes per conversion, live tier", "liveBytes", "%.3f", 0.40, 0.36);
    small("after repack", "repackedBytes", "%.3f", 0.33, 0.30);
    small("a power-up with all channels quiet, after repack", "quietSetBytes", "%.3f", 0.24, 0.225);
    small(
        "quiet channels (V, R2, R3) of the mixes, after repack",
        "repackedQuietChannelsBytes",
        "%.3f",
        0.24,
        0.225);
    large("whole chain on one thread, million conversions/s", "chainPerSecond", 16e6, 45e6);
    ratio("whole chain against packed raw's read", "chainPerSecond", 20);
    large("read all, live tier, million/s", "liveReadPerSecond", 80e6, 150e6);
    ratio("read all, live tier, against packed raw's read", "liveReadPerSecond", 8);
    large("read all, repacked, million/s", "repackedReadPerSecond", 80e6, 150e6);
    ratio("read all, repacked, against packed raw's read", "repackedReadPerSecond", 8);
    small("overview 1 000 px, 10 min, live tier, ms", "liveOverviewMillis", "%.2f", 10, 2);
    small("overview 1 000 px, 10 min, repacked, ms", "repackedOverviewMillis", "%.2f", 10, 2);
    small("overview 1 000 px, 24 h, ms", "dayOverviewMillis", "%.2f", 10, 2);
    small("zoom 2 s, live tier, ms", "liveZoomMillis", "%.2f", 1, 0.5);
    small("zoom 2 s, repacked, ms", "repackedZoomMillis", "%.2f", 1, 0.5);
    small("zoom 2 s of 24 h, ms", "dayZoomMillis", "%.2f", 1, 0.5);
    line("");
    perRun();
    others();
    return text.toString();
  }

  private double worst(String key, boolean small) {
    double worst = Double.NaN;
    for (Map<String, Object> run : runs) {
      if (run.get(key) instanceof Number value) {
        double next = value.doubleValue();
        worst = Double.isNaN(worst) || (small ? next > worst : next < worst) ? next : worst;
      }
    }
    return worst;
  }

  private void small(String name, String key, String format, double limit, double target) {
    double value = worst(key, true);
    row(name, format(format, value), text(limit), text(target), value <= limit, value <= target);
  }

  private void large(String name, String key, double limit, double target) {
    double value = worst(key, false);
    row(
        name,
        format("%.1f", value / 1e6),
        text(limit / 1e6),
        text(target / 1e6),
        value >= limit,
        value >= target);
  }

  private void ratio(String name, String key, int part) {
    double worst = Double.MAX_VALUE;
    for (Map<String, Object> run : runs) {
      double own = ((Number) run.get(key)).doubleValue();
      worst = Math.min(worst, own / ((Number) run.get("packedRawReadPerSecond")).doubleValue());
    }
    row(name, "1/" + format("%.1f", 1 / worst), "1/" + part, "", worst * part >= 1, false);
  }

  private void row(
      String name, String value, String limit, String target, boolean kept, boolean best) {
    String verdict = best ? "on target" : kept ? "within" : "**outside**";
    line("| %s | %s | %s | %s | %s |", name, value, limit, target, verdict);
  }

  private void perRun() {
    line(
        "| mix, seed | information bound | live | repacked | chain, ns: session + log | packed raw"
            + " read | repack, million/s |");
    line("|---|---|---|---|---|---|---|");
    for (Map<String, Object> run : runs) {
      line(
          "| %s, %s | %.3f | %.3f | %.3f | %.1f + %.1f | %.0f | %.1f |",
          run.get("mix"),
          run.get("seed"),
          run.get("boundBytes"),
          run.get("liveBytes"),
          run.get("repackedBytes"),
          run.get("chainSessionNanos"),
          run.get("chainLogNanos"),
          (Double) run.get("packedRawReadPerSecond") / 1e6,
          (Double) run.get("repackPerSecond") / 1e6);
    }
    line("");
  }

  private void others() {
    line(
        "| other format, means of the runs | bytes per conversion | written, million/s | read,"
            + " million/s |");
    line("|---|---|---|---|");
    if (!(runs.get(0).get("otherFormats") instanceof Map<?, ?> first)) {
      return;
    }
    for (Object name : first.keySet()) {
      double bytes = 0;
      double writes = 0;
      double reads = 0;
      for (Map<String, Object> run : runs) {
        OtherFormats.Figures figures =
            (OtherFormats.Figures) ((Map<?, ?>) run.get("otherFormats")).get(name);
        bytes += figures.bytes() / runs.size();
        writes += figures.writes() / 1e6 / runs.size();
        reads += figures.reads() / 1e6 / runs.size();
      }
      line("| %s | %.3f | %.2f | %.2f |", name, bytes, writes, reads);
    }
  }

  private static String text(double value) {
    return value == Math.rint(value) ? format("%.0f", value) : Double.toString(value);
  }

  private static String format(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }

  private void line(String format, Object... values) {
    text.append(format(format, values)).append('\n');
  }
}
