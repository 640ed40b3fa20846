package firstamp.log;

import firstamp.log.stream.StreamSink;
import firstamp.model.ClipInput;
import firstamp.model.ClipMove;
import firstamp.model.ClipMove.Act;
import firstamp.model.Happening;
import firstamp.model.ProbeEvent;
import firstamp.model.samples.ConversionBlock;
import firstamp.model.samples.Reading;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What marks meant to the rules before they became notes (rules version 1): there a moved clip, a
 * mode and a step were written as marks, and every mark began a stretch.
 */
final class SpokenMarks {
  private static final Map<String, Act> NAMED = named();
  private static final Map<String, Act> ALONE =
      Map.of(
          "tapping", Act.TOUCHED,
          "tapping ended", Act.LEFT,
          "clip off", Act.OFF,
          "taken back", Act.BACK);
  private static final Map<String, Happening.Mode> MODES =
      Map.of(
          "mode: usual", Happening.Mode.USUAL,
          "mode: hands in", Happening.Mode.HANDS_IN,
          "mode: soak", Happening.Mode.SOAK,
          "soak: the time is over", Happening.Mode.SOAK_OVER);
  private static final Pattern STEP =
      Pattern.compile(
          "step ([0-9]{1,3}) of ([0-9]{1,3})(:| stopped:| settled:) (.*)", Pattern.DOTALL);
  private static final Pattern TYPED =
      Pattern.compile("(.*): dBV (-?[0-9.E-]{1,24})", Pattern.DOTALL);
  private static final String SWITCHED = ", switched to ";

  private SpokenMarks() {}

  /** Gives a sink what each mark meant, behind the mark. */
  static StreamSink before(StreamSink sink) {
    return new StreamSink() {
      @Override
      public void conversions(ConversionBlock block) {
        sink.conversions(block);
      }

      @Override
      public void reading(Reading reading) {
        sink.reading(reading);
      }

      @Override
      public void event(ProbeEvent event) {
        sink.event(event);
        if (event instanceof ProbeEvent.Marked marked) {
          sink.event(meaning(marked));
        }
      }
    };
  }

  static ProbeEvent meaning(ProbeEvent.Marked marked) {
    return new ProbeEvent.Happened(marked.micros(), meaning(marked.text()));
  }

  /** What a mark of an older power-up says to rules and figures; never null. */
  static Happening meaning(String text) {
    if (ALONE.containsKey(text)) {
      return ClipMove.of(ALONE.get(text));
    }
    if (MODES.containsKey(text)) {
      return new Happening.ModeSet(MODES.get(text));
    }
    for (Map.Entry<String, Act> named : NAMED.entrySet()) {
      if (text.startsWith(named.getKey() + " ")) {
        Happening move = move(named.getValue(), text.substring(named.getKey().length() + 1));
        return move == null ? new Happening.SetChanged(text) : move;
      }
    }
    Matcher step = STEP.matcher(text);
    if (step.matches()) {
      return step(step);
    }
    return said(text);
  }

  private static Happening move(Act act, String rest) {
    String name = rest;
    Double levelDbv = null;
    if (act == Act.TYPED) {
      Matcher typed = TYPED.matcher(rest);
      levelDbv = typed.matches() ? number(typed.group(2)) : null;
      if (levelDbv == null) {
        return null;
      }
      name = typed.group(1);
    }
    ClipInput input = null;
    for (ClipInput each : ClipInput.values()) {
      if (name.endsWith(", " + each.words())) {
        input = each;
        name = name.substring(0, name.length() - each.words().length() - 2);
      }
    }
    int at = name.lastIndexOf(SWITCHED);
    String mode = at < 0 ? null : name.substring(at + SWITCHED.length());
    return new ClipMove(act, at < 0 ? name : name.substring(0, at), mode, input, levelDbv);
  }

  private static Double number(String text) {
    try {
      double value = Double.parseDouble(text);
      return value >= ClipMove.LOWEST_DBV && value <= ClipMove.HIGHEST_DBV ? (Double) value : null;
    } catch (NumberFormatException none) {
      return null;
    }
  }

  private static Happening step(Matcher step) {
    Happening.StepState state =
        switch (step.group(3)) {
          case ":" -> Happening.StepState.BEGUN;
          case " settled:" -> Happening.StepState.SETTLED;
          default -> Happening.StepState.STOPPED;
        };
    return new Happening.Step(
        Integer.parseInt(step.group(1)), Integer.parseInt(step.group(2)), state, step.group(4));
  }

  private static Happening said(String text) {
    String words = text.toLowerCase(Locale.ROOT);
    if (words.contains("record on")) {
      return new Happening.Recording(Happening.RecordState.ON);
    }
    if (words.contains("record off")) {
      return new Happening.Recording(Happening.RecordState.OFF);
    }
    return new Happening.SetChanged(text);
  }

  private static Map<String, Act> named() {
    Map<String, Act> named = new LinkedHashMap<>();
    named.put("clip on", Act.HELD);
    named.put("worked once:", Act.STROKE);
    named.put("to be tapped:", Act.RESTING);
    named.put("signal there at", Act.THERE);
    named.put("signal gone at", Act.GONE);
    named.put("level typed at", Act.TYPED);
    named.put("mended:", Act.MENDED);
    return named;
  }
}
