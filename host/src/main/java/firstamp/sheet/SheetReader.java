package firstamp.sheet;

import firstamp.model.JobSheet;
import firstamp.model.RuleId;
import firstamp.model.text.Wording.Phrase;
import firstamp.model.text.Wording.Quantity;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Reads job sheets strictly: whatever is not understood is an error with line and column. */
public final class SheetReader {
  private static final long LARGEST_BYTES = 1_000_000;

  /** Above it the probe stays off the set. */
  private static final double HIGHEST_V = 60;

  private final String file;

  private SheetReader(String file) {
    this.file = file;
  }

  /**
   * Reads a file (UTF-8).
   *
   * @throws IOException the file is missing or cannot be read
   * @throws SheetException it is not a job sheet
   */
  public static SheetDocument read(Path path) throws IOException, SheetException {
    if (Files.size(path) > LARGEST_BYTES) {
      throw new SheetException(
          path.toString(),
          0,
          0,
          "",
          new Phrase("long", Files.size(path)),
          new Phrase("most", LARGEST_BYTES),
          new Phrase("right-file"));
    }
    byte[] bytes = Files.readAllBytes(path);
    // Strict: a letter of another encoding is refused, not replaced.
    String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    return parse(path.toString(), text.startsWith("\uFEFF") ? text.substring(1) : text);
  }

  /**
   * Reads a text.
   *
   * @param file name for messages
   */
  public static SheetDocument parse(String file, String text) throws SheetException {
    Node top = JsonTree.read(file, text);
    return new SheetDocument(file, new SheetReader(file).sheet(top), top);
  }

  private JobSheet sheet(Node node) throws SheetException {
    Fields top = Fields.of(file, node, Keys.TOP);
    top.needs("set", "\"set\":{\"name\":\"My set\"}");
    top.needs("supply", "\"supply\":{\"nominalV\":12}");
    newer(top);
    Integer version = top.whole("sheet");
    JobSheet sheet =
        new JobSheet(
            version == null ? 1 : version,
            set(top.object("set", Keys.SET)),
            supply(top.object("supply", Keys.SUPPLY)),
            limits(top.object("limits", Keys.LIMITS)),
            rails(top),
            levels(top.object("levels", Keys.LEVELS)),
            rules(top),
            PathReader.path(file, top.object("path", Keys.PATH)),
            PathReader.wires(file, top),
            steps(top));
    new SheetSense(file, top).check(sheet);
    return sheet;
  }

  private void newer(Fields top) throws SheetException {
    if (top.has("sheet") && top.at("sheet").value() instanceof Double version && version > 1) {
      throw Fields.problem(file, top.at("sheet"), "1", new Phrase("newer"));
    }
  }

  private List<JobSheet.Step> steps(Fields top) throws SheetException {
    List<JobSheet.Step> steps = new ArrayList<>();
    for (Node node : top.items("steps")) {
      Fields step = Fields.of(file, node, Keys.STEP);
      step.needs("supplyV", "\"supplyV\":3");
      step.needs("limitA", "\"limitA\":0.02");
      double volts = step.number("supplyV");
      if (!steps.isEmpty() && volts < steps.get(steps.size() - 1).supplyV()) {
        throw Fields.problem(
            file, step.at("supplyV"), new Phrase("steps"), new Phrase("steps.sort"));
      }
      steps.add(
          new JobSheet.Step(
              volts,
              step.number("limitA"),
              step.number("dwellMs"),
              step.number("settledPercentPerMin"),
              step.number("belowA"),
              step.number("timeoutMs"),
              step.flag("forming")));
    }
    return steps;
  }

  private JobSheet.SetInfo set(Fields set) throws SheetException {
    set.needs("name", "\"name\":\"My set\"");
    return new JobSheet.SetInfo(
        set.text("name"),
        set.word("kind"),
        set.word("chassis"),
        set.flag("motor"),
        set.flag("valveRectifier"),
        set.number("leakageA"),
        set.number("motorOhm"));
  }

  private JobSheet.Supply supply(Fields supply) throws SheetException {
    supply.needs("nominalV", "\"nominalV\":12");
    if (supply.at("nominalV").value() instanceof Double volts && volts > HIGHEST_V) {
      throw Fields.problem(
          file,
          supply.at("nominalV"),
          new Phrase("to", 0.5, new Quantity(60, "V")),
          new Phrase("above60"));
    }
    return new JobSheet.Supply(
        supply.word("kind"),
        supply.word("probeSits"),
        supply.number("nominalV"),
        supply.number("minV"),
        supply.number("maxV"),
        supply.number("limitA"),
        supply.number("fuseA"),
        supply.flag("look"),
        supply.word("through"),
        supply.number("labelW"),
        supply.number("idleA"),
        supply.number("capacitanceUf"));
  }

  private JobSheet.Limits limits(Fields limits) throws SheetException {
    return limits == null
        ? null
        : new JobSheet.Limits(
            limits.number("inrushA"),
            limits.number("inrushMs"),
            limits.number("runningA"),
            limits.number("i2tA2s"),
            limits.number("peakA"),
            limits.number("startA"),
            limits.number("startMs"));
  }

  private List<JobSheet.Rail> rails(Fields top) throws SheetException {
    List<JobSheet.Rail> rails = new ArrayList<>();
    Set<Integer> inputs = new HashSet<>();
    for (Node node : top.items("rails")) {
      Fields rail = Fields.of(file, node, Keys.RAIL);
      rail.needs("input", "\"input\":1");
      int input = rail.whole("input");
      if (!inputs.add(input)) {
        throw Fields.problem(file, rail.at("input"), new Phrase("rail"), new Phrase("other-clip"));
      }
      rails.add(
          new JobSheet.Rail(
              input,
              rail.text("name"),
              rail.number("nominalV"),
              rail.number("tolerancePercent"),
              rail.number("settleMs"),
              rail.number("overV"),
              rail.number("rippleMaxVrms"),
              rail.number("capacitanceUf"),
              rail.word("rectifier")));
    }
    return rails;
  }

  private JobSheet.Levels levels(Fields levels) throws SheetException {
    return levels == null
        ? null
        : new JobSheet.Levels(
            levels.number("toneHz"),
            levels.number("headOhm"),
            levels.number("expectedDb"),
            levels.number("marginDb"),
            levels.number("meterSignalDbv"),
            levels.number("fromMs"),
            levels.number("meterFullV"),
            curve(levels));
  }

  private List<JobSheet.LevelPoint> curve(Fields levels) throws SheetException {
    List<JobSheet.LevelPoint> curve = new ArrayList<>();
    for (Node node : levels.items("expectedCurve")) {
      Fields point = Fields.of(file, node, Keys.CURVE_POINT);
      point.needs("hz", "\"hz\":400");
      point.needs("db", "\"db\":38");
      double hz = point.number("hz");
      if (!curve.isEmpty() && hz <= curve.get(curve.size() - 1).hz()) {
        throw Fields.problem(file, point.at("hz"), new Phrase("curve"), new Phrase("curve.sort"));
      }
      curve.add(new JobSheet.LevelPoint(hz, point.number("db")));
    }
    return curve;
  }

  private Map<String, JobSheet.RuleSettings> rules(Fields top) throws SheetException {
    Map<String, JobSheet.RuleSettings> rules = new LinkedHashMap<>();
    Map<String, Object> known = new LinkedHashMap<>();
    for (RuleId rule : RuleId.values()) {
      known.put(rule.id(), Keys.Kind.OBJECT);
    }
    Fields said = top.object("rules", known);
    if (said != null) {
      for (RuleId rule : RuleId.values()) {
        if (said.has(rule.id())) {
          rules.put(rule.id(), rule(rule, said.at(rule.id())));
        }
      }
    }
    return rules;
  }

  private JobSheet.RuleSettings rule(RuleId rule, Node node) throws SheetException {
    Map<String, Object> keys = new LinkedHashMap<>(Keys.RULE);
    for (RuleId.Parameter parameter : rule.parameters().values()) {
      keys.put(parameter.name(), new Range(parameter.lowest(), parameter.highest(), ""));
    }
    Fields said = Fields.of(file, node, keys);
    Map<String, Double> numbers = new HashMap<>();
    for (String name : rule.parameters().keySet()) {
      if (said.has(name)) {
        Double number = name.equals("input") ? Double.valueOf(said.whole(name)) : said.number(name);
        numbers.put(name, number);
      }
    }
    return new JobSheet.RuleSettings(
        said.flag("enabled"),
        said.number("onDelayMs"),
        said.number("offDelayMs"),
        said.number("deadbandPercent"),
        said.flag("latch"),
        said.word("priority"),
        said.word("action"),
        numbers);
  }
}
