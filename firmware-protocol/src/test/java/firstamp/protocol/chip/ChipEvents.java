package firstamp.protocol.chip;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The simulator's record of one run: what the switch pin did, when the waveform crossed a level.
 */
record ChipEvents(List<Event> events, long conversionsSent, long bytesLost) {
  static final double CYCLES_PER_MICROSECOND = 16;

  private static final Pattern EVENT =
      Pattern.compile("\\{\"cycle\":(\\d+),\"t_us\":\\d+,\"(supply|crossed|fault)\":\"(\\w+)\"}");
  private static final Pattern SENT =
      Pattern.compile("\\{\"conversionsSent\":(\\d+),\"bytesLost\":(\\d+)}");

  /**
   * One line: what = "on", "look", "off", the name of the column that crossed its level, or the
   * fault.
   */
  record Event(long cycle, String what) {}

  static ChipEvents read(Path file) throws IOException {
    List<Event> events = new ArrayList<>();
    long sent = -1;
    long lost = -1;
    for (String line : Files.readAllLines(file)) {
      Matcher event = EVENT.matcher(line);
      Matcher counts = SENT.matcher(line);
      if (event.matches()) {
        events.add(new Event(Long.parseLong(event.group(1)), event.group(3)));
      } else if (counts.matches()) {
        sent = Long.parseLong(counts.group(1));
        lost = Long.parseLong(counts.group(2));
      } else {
        throw new IOException(file + ": not an event: " + line);
      }
    }
    return new ChipEvents(List.copyOf(events), sent, lost);
  }

  /** Cycle of the last event of this kind. */
  OptionalLong last(String what) {
    return events.stream()
        .filter(e -> e.what().equals(what))
        .mapToLong(Event::cycle)
        .reduce((first, second) -> second);
  }

  /** What the switch did last, empty when it never moved. */
  String lastSupply() {
    return events.stream()
        .map(Event::what)
        .filter(what -> what.equals("on") || what.equals("look") || what.equals("off"))
        .reduce((first, second) -> second)
        .orElse("");
  }

  /**
   * Microseconds from a crossing of the column to the switch pin low, one for each time that the
   * pin went low after one.
   */
  List<Double> reactionsMicros(String column) {
    List<Double> reactions = new ArrayList<>();
    long crossed = -1;
    for (Event event : events) {
      if (event.what().equals(column)) {
        crossed = event.cycle();
      } else if (event.what().equals("off") && crossed >= 0) {
        reactions.add((event.cycle() - crossed) / CYCLES_PER_MICROSECOND);
        crossed = -1;
      }
    }
    return reactions;
  }
}
