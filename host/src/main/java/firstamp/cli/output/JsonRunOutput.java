package firstamp.cli.output;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import firstamp.account.FigureList;
import firstamp.model.Alarm;
import firstamp.model.Happening;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.ProbeHello;
import firstamp.model.SelfTestWords;
import firstamp.model.Summary;
import firstamp.pipeline.HappeningJson;
import firstamp.pipeline.ReadingFigures;
import firstamp.pipeline.SummaryJson;
import firstamp.pipeline.TripFigures;
import firstamp.study.OtherRules;
import firstamp.study.ToldJson;
import firstamp.study.WhatIfReport;
import java.util.List;
import java.util.Locale;

/** A run as JSON lines. */
public final class JsonRunOutput implements RunOutput {
  private final JsonLines lines;
  private final boolean readings;
  private OtherRules otherRules;

  private boolean closed;

  public JsonRunOutput(JsonLines lines, boolean readings) {
    this.lines = lines;
    this.readings = readings;
  }

  @Override
  public void started(
      Integer powerUp, String uuid, String sheet, ProbeHello hello, boolean observe) {
    ObjectNode node = JsonLines.object("started");
    node.put("powerUp", powerUp);
    node.put("uuid", uuid);
    node.put("sheet", sheet);
    node.put("probe", hello.kind());
    node.put("zero", observe ? "supply" : "switch");
    node.put("firmware", hello.firmwareMajor() + "." + hello.firmwareMinor());
    node.put("bootId", hello.bootId());
    node.put("calibration", hello.calibration().kind().name().toLowerCase(Locale.ROOT));
    lines.print(node);
  }

  @Override
  public void countdown(int seconds) {
    // Only people want it; it goes to standard error in the other form.
  }

  @Override
  public void look(Summary.LookFigures figures) {
    ObjectNode node = JsonLines.object("look");
    node.put("result", figures.result());
    node.put("ohm", figures.ohm());
    if (figures.atMost()) {
      node.put("ohmAtMost", true);
    }
    node.put("uF", figures.uF());
    node.put("supplyV", figures.supplyV());
    lines.print(node);
  }

  @Override
  public void alarm(Alarm alarm) {
    lines.print(SummaryJson.put(alarm, JsonLines.object("alarm")));
  }

  @Override
  public void trip(TripFigures figures) {
    ObjectNode node = JsonLines.object("trip");
    node.put("cause", figures.cause());
    node.put("rail", figures.rail());
    node.put("atMs", figures.atMs());
    node.put("value", figures.value());
    node.put("limit", figures.limit());
    node.put("unit", figures.unit());
    node.put("limitedMs", figures.limitedMs());
    for (String fault : SelfTestWords.ids(figures.selfTestBits())) {
      node.withArray("faults").add(fault);
    }
    lines.print(node);
  }

  @Override
  public void off(OffCause by, double atMs) {
    String who = RunWords.offBy(by);
    if (who != null) {
      ObjectNode node = JsonLines.object("off");
      node.put("by", who);
      at(node, atMs);
      lines.print(node);
    }
  }

  @Override
  public void openingSeen(double atMs) {
    ObjectNode node = JsonLines.object("offSeen");
    node.put("atMs", atMs);
    lines.print(node);
  }

  @Override
  public void mark(String text, double atMs) {
    ObjectNode node = JsonLines.object("mark");
    node.put("text", text);
    at(node, atMs);
    lines.print(node);
  }

  @Override
  public void happened(Happening what, double atMs) {
    lines.print(
        HappeningJson.put(what, known(atMs) ? (Double) atMs : null, JsonLines.object("event")));
  }

  @Override
  public void told(ProbeEvent.Told event, double atMs) {
    ObjectNode node = ToldJson.put(event, JsonLines.object("event"));
    at(node, atMs);
    lines.print(node);
  }

  @Override
  public void link(ProbeEvent.LinkState state, String text, double atMs) {
    ObjectNode node = JsonLines.object("link");
    node.put("state", state.name().toLowerCase(Locale.ROOT).replace('_', '-'));
    node.put("text", text);
    at(node, atMs);
    lines.print(node);
  }

  @Override
  public void log(ProbeEvent.LogChanged event, double atMs) {
    ObjectNode node = JsonLines.object("log");
    node.put("state", event.logging() ? "logging" : "not-logging");
    node.put("text", event.text());
    at(node, atMs);
    lines.print(node);
  }

  @Override
  public void on() {
    closed = true;
  }

  /** Times count from the closing: before one that nobody knows yet there is none. */
  private boolean known(double atMs) {
    return closed || atMs < 0;
  }

  private void at(ObjectNode node, double atMs) {
    if (known(atMs)) {
      node.put("atMs", atMs);
    }
  }

  @Override
  public boolean wantsFigures() {
    return readings;
  }

  @Override
  public void figures(ReadingFigures figures) {
    ObjectNode node = JsonLines.object("reading");
    at(node, figures.atMs());
    node.put("probeMs", figures.probeMs());
    node.put("supplyA", figures.supplyA());
    node.put("supplyV", figures.supplyV());
    ArrayNode rails = node.putArray("rails");
    for (ReadingFigures.RailVolts rail : figures.rails()) {
      ObjectNode entry = rails.addObject();
      entry.put("rail", rail.rail());
      entry.put("v", rail.volts());
    }
    node.put("headV", figures.headRmsV());
    node.put("meterV", figures.meterRmsV());
    lines.print(node);
  }

  @Override
  public void beside(String sheet, List<WhatIfReport.Beside> rows) {
    for (WhatIfReport.Beside row : rows) {
      ObjectNode node = JsonLines.object("beside");
      node.put("rule", row.rule());
      if (row.railName() != null || row.rail() > 0) {
        node.put("rail", row.rail());
        node.put("railName", row.railName());
      }
      node.put("thenAtMs", row.thenAtMs());
      node.put("wouldAtMs", row.wouldAtMs());
      node.put("tripCause", row.cause());
      lines.print(node);
    }
  }

  @Override
  public void otherRules(OtherRules rules) {
    otherRules = rules;
  }

  @Override
  public void summary(Summary summary, FigureList figures) {
    ObjectNode node = SummaryJson.of(summary);
    if (otherRules != null) {
      otherRules.put(node);
    }
    lines.print(node);
  }
}
