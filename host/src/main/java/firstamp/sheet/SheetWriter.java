package firstamp.sheet;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import firstamp.model.JobSheet;
import firstamp.model.RuleId;
import java.io.IOException;
import java.io.StringWriter;
import java.util.Map;

/** Writes a job sheet as JSON text: keys in the order of the format, what was not said left out. */
public final class SheetWriter {
  private final JsonGenerator out;

  private SheetWriter(JsonGenerator out) {
    this.out = out;
  }

  /** The text, with a newline at its end; reading it gives an equal sheet. */
  public static String write(JobSheet sheet) {
    StringWriter text = new StringWriter();
    DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
    printer.indentObjectsWith(new DefaultIndenter("  ", "\n"));
    printer.indentArraysWith(new DefaultIndenter("  ", "\n"));
    try (JsonGenerator out = new JsonFactory().createGenerator(text)) {
      out.setPrettyPrinter(printer);
      new SheetWriter(out).sheet(sheet);
    } catch (IOException e) {
      throw new IllegalStateException("writing to a string cannot fail", e);
    }
    return text.append('\n').toString();
  }

  private void sheet(JobSheet sheet) throws IOException {
    out.writeStartObject();
    put("sheet", (double) sheet.sheet());
    set(sheet.set());
    supply(sheet.supply());
    if (sheet.limits() != null) {
      limits(sheet.limits());
    }
    if (!sheet.rails().isEmpty()) {
      out.writeArrayFieldStart("rails");
      for (JobSheet.Rail rail : sheet.rails()) {
        rail(rail);
      }
      out.writeEndArray();
    }
    if (sheet.levels() != null) {
      levels(sheet.levels());
    }
    rules(sheet.rules());
    if (sheet.path() != null) {
      path(sheet.path());
    }
    if (!sheet.steps().isEmpty()) {
      out.writeArrayFieldStart("steps");
      for (JobSheet.Step step : sheet.steps()) {
        step(step);
      }
      out.writeEndArray();
    }
    if (!sheet.unknownWires().isEmpty()) {
      out.writeArrayFieldStart("unknownWires");
      for (JobSheet.UnknownWire wire : sheet.unknownWires()) {
        wire(wire);
      }
      out.writeEndArray();
    }
    out.writeEndObject();
  }

  private void set(JobSheet.SetInfo set) throws IOException {
    out.writeObjectFieldStart("set");
    put("name", set.name());
    put("kind", set.kind());
    put("chassis", set.chassis());
    put("motor", set.motor());
    put("valveRectifier", set.valveRectifier());
    put("leakageA", set.leakageA());
    put("motorOhm", set.motorOhm());
    out.writeEndObject();
  }

  private void supply(JobSheet.Supply supply) throws IOException {
    out.writeObjectFieldStart("supply");
    put("kind", supply.kind());
    put("probeSits", supply.probeSits());
    put("nominalV", supply.nominalV());
    put("minV", supply.minV());
    put("maxV", supply.maxV());
    put("limitA", supply.limitA());
    put("fuseA", supply.fuseA());
    put("look", supply.look());
    put("through", supply.through());
    put("labelW", supply.labelW());
    put("idleA", supply.idleA());
    put("capacitanceUf", supply.capacitanceUf());
    out.writeEndObject();
  }

  private void limits(JobSheet.Limits limits) throws IOException {
    out.writeObjectFieldStart("limits");
    put("inrushA", limits.inrushA());
    put("inrushMs", limits.inrushMs());
    put("runningA", limits.runningA());
    put("i2tA2s", limits.i2tA2s());
    put("peakA", limits.peakA());
    put("startA", limits.startA());
    put("startMs", limits.startMs());
    out.writeEndObject();
  }

  private void rail(JobSheet.Rail rail) throws IOException {
    out.writeStartObject();
    put("input", (double) rail.input());
    put("name", rail.name());
    put("nominalV", rail.nominalV());
    put("tolerancePercent", rail.tolerancePercent());
    put("settleMs", rail.settleMs());
    put("overV", rail.overV());
    put("rippleMaxVrms", rail.rippleMaxVrms());
    put("capacitanceUf", rail.capacitanceUf());
    put("rectifier", rail.rectifier());
    out.writeEndObject();
  }

  private void step(JobSheet.Step step) throws IOException {
    out.writeStartObject();
    put("supplyV", step.supplyV());
    put("limitA", step.limitA());
    put("dwellMs", step.dwellMs());
    put("settledPercentPerMin", step.settledPercentPerMin());
    put("belowA", step.belowA());
    put("timeoutMs", step.timeoutMs());
    put("forming", step.forming());
    out.writeEndObject();
  }

  private void levels(JobSheet.Levels levels) throws IOException {
    out.writeObjectFieldStart("levels");
    put("toneHz", levels.toneHz());
    put("headOhm", levels.headOhm());
    put("expectedDb", levels.expectedDb());
    put("marginDb", levels.marginDb());
    put("meterSignalDbv", levels.meterSignalDbv());
    put("fromMs", levels.fromMs());
    put("meterFullV", levels.meterFullV());
    if (!levels.expectedCurve().isEmpty()) {
      out.writeArrayFieldStart("expectedCurve");
      for (JobSheet.LevelPoint point : levels.expectedCurve()) {
        out.writeStartObject();
        put("hz", point.hz());
        put("db", point.db());
        out.writeEndObject();
      }
      out.writeEndArray();
    }
    out.writeEndObject();
  }

  private void rules(Map<String, JobSheet.RuleSettings> rules) throws IOException {
    if (rules.isEmpty()) {
      return;
    }
    out.writeObjectFieldStart("rules");
    for (RuleId rule : RuleId.values()) {
      JobSheet.RuleSettings said = rules.get(rule.id());
      if (said != null) {
        out.writeObjectFieldStart(rule.id());
        for (String name : rule.parameters().keySet().stream().sorted().toList()) {
          put(name, said.numbers().get(name));
        }
        put("enabled", said.enabled());
        put("onDelayMs", said.onDelayMs());
        put("offDelayMs", said.offDelayMs());
        put("deadbandPercent", said.deadbandPercent());
        put("latch", said.latch());
        put("priority", said.priority());
        put("action", said.action());
        out.writeEndObject();
      }
    }
    out.writeEndObject();
  }

  private void path(JobSheet.SignalPath path) throws IOException {
    out.writeObjectFieldStart("path");
    out.writeArrayFieldStart("points");
    for (JobSheet.TestPoint point : path.points()) {
      out.writeStartObject();
      put("name", point.name());
      put("expectedDbv", point.expectedDbv());
      put("effort", point.effort());
      if (!point.byMode().isEmpty()) {
        out.writeArrayFieldStart("byMode");
        for (JobSheet.ModeLevel level : point.byMode()) {
          out.writeStartObject();
          put("mode", level.mode());
          put("expectedDbv", level.expectedDbv());
          out.writeEndObject();
        }
        out.writeEndArray();
      }
      out.writeEndObject();
    }
    out.writeEndArray();
    out.writeArrayFieldStart("joints");
    for (JobSheet.Joint joint : path.joints()) {
      out.writeStartObject();
      put("name", joint.name());
      put("from", joint.from());
      put("to", joint.to());
      put("kind", joint.kind());
      if (!joint.modes().isEmpty()) {
        out.writeArrayFieldStart("modes");
        for (String mode : joint.modes()) {
          out.writeString(mode);
        }
        out.writeEndArray();
      }
      put("weight", joint.weight());
      out.writeEndObject();
    }
    out.writeEndArray();
    if (!path.modes().isEmpty()) {
      out.writeArrayFieldStart("modes");
      for (JobSheet.Mode mode : path.modes()) {
        out.writeStartObject();
        put("name", mode.name());
        put("source", mode.source());
        out.writeEndObject();
      }
      out.writeEndArray();
    }
    out.writeEndObject();
  }

  private void wire(JobSheet.UnknownWire wire) throws IOException {
    out.writeStartObject();
    put("name", wire.name());
    put("colour", wire.colour());
    put("build", wire.build());
    put("reachMm", wire.reachMm());
    put("foundAt", wire.foundAt());
    if (!wire.places().isEmpty()) {
      out.writeArrayFieldStart("places");
      for (JobSheet.Landing place : wire.places()) {
        landing(place);
      }
      out.writeEndArray();
    }
    out.writeEndObject();
  }

  private void landing(JobSheet.Landing place) throws IOException {
    if (place.kind() == null && place.ifWrong() == null) {
      out.writeString(place.name());
      return;
    }
    out.writeStartObject();
    put("name", place.name());
    put("kind", place.kind());
    put("ifWrong", place.ifWrong());
    out.writeEndObject();
  }

  private void put(String key, String text) throws IOException {
    if (text != null) {
      out.writeStringField(key, text);
    }
  }

  private void put(String key, Boolean flag) throws IOException {
    if (flag != null) {
      out.writeBooleanField(key, flag);
    }
  }

  /** Whole numbers are written without a point. */
  private void put(String key, Double number) throws IOException {
    if (number == null) {
      return;
    }
    if (number == Math.rint(number) && Math.abs(number) < 1e15) {
      out.writeNumberField(key, number.longValue());
    } else {
      out.writeNumberField(key, number);
    }
  }
}
