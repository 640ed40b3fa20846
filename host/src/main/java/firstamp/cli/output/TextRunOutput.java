package firstamp.cli.output;

import firstamp.account.FigureList;
import firstamp.analysis.figures.InrushExpected;
import firstamp.model.Alarm;
import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.ProbeHello;
import firstamp.model.SelfTestWords;
import firstamp.model.Summary;
import firstamp.model.text.Worded;
import firstamp.model.text.Wording.Quantity;
import firstamp.pipeline.ReadingFigures;
import firstamp.pipeline.TripFigures;
import firstamp.study.OtherRules;
import firstamp.study.WhatIfReport;
import java.io.PrintStream;
import java.util.List;
import java.util.Locale;

/** A run as sentences, one a line. */
public final class TextRunOutput implements RunOutput {
  private final Speech speech;
  private final PrintStream out;
  private final PrintStream err;
  private final boolean readings;
  private final String afterOff;
  private final boolean countsDown;
  private final JobSheet sheet;
  private final boolean forecasts;
  private Double lookOhm;
  private boolean closed;

  /** Sentences on a stream, without a forecast of the inrush. */
  public TextRunOutput(
      Speech speech,
      PrintStream out,
      PrintStream err,
      boolean readings,
      boolean countsDown,
      JobSheet sheet) {
    this(speech, out, err, readings, countsDown, null, sheet, false);
  }

  /**
   * Sentences on a stream.
   *
   * @param speech the language
   * @param sheet names of the rails
   * @param forecasts whether the inrush is forecast after the first look
   * @param countsDown whether the seconds before switching on are counted down
   * @param afterOff what stays live once the switch is open, null = nothing
   */
  public TextRunOutput(
      Speech speech,
      PrintStream out,
      PrintStream err,
      boolean readings,
      boolean countsDown,
      Worded afterOff,
      JobSheet sheet,
      boolean forecasts) {
    this.forecasts = forecasts;
    this.speech = speech;
    this.sheet = sheet;
    this.countsDown = countsDown;
    this.out = out;
    this.err = err;
    this.readings = readings;
    this.afterOff = afterOff == null ? "" : ". " + speech.in(afterOff);
  }

  @Override
  public void started(Integer powerUp, String uuid, String set, ProbeHello hello, boolean observe) {
    lookOhm = hello.lookOhm();
    Object kind = hello.kind();
    say(
        powerUp == null
            ? Said.of("run.started", set, kind)
            : Said.of("run.started.number", set, kind, powerUp));
  }

  @Override
  public void countdown(int seconds) {
    if (seconds > 0 && !countsDown) {
      return;
    }
    err.println(speech.in(seconds == 0 ? Said.of("run.on-now") : Said.of("run.on-in", seconds)));
  }

  @Override
  public void look(Summary.LookFigures figures) {
    StringBuilder line = new StringBuilder(speech.say("look." + figures.result()));
    for (FigureList.Figure figure : FigureList.of(figures).figures()) {
      String value = speech.figures().text(figure);
      line.append(", ");
      line.append(
          figure.key().equals("look.supplyV")
              ? speech.in(Said.of("run.look.supply", value))
              : value);
    }
    say(Said.of("run.look", line.toString()));
    boolean closes = List.of("clear", "low").contains(figures.result());
    InrushExpected inrush =
        !forecasts || !closes ? null : InrushExpected.of(sheet, figures, lookOhm);
    if (inrush != null) {
      String ms = speech.number("%.2g", inrush.ms());
      say(
          inrush.limitA() == null
              ? Said.of("run.inrush", Quantity.amps(inrush.peakA()), ms)
              : Said.of(
                  "run.inrush.limit",
                  Quantity.amps(inrush.limitA()),
                  ms,
                  Quantity.amps(inrush.peakA())));
    }
  }

  @Override
  public void alarm(Alarm alarm) {
    String mark =
        speech.in(
            Said.of(
                "run.alarm." + alarm.state().name().toLowerCase(Locale.ROOT).replace('_', '-')));
    say(millis(alarm.changedMs()) + "  " + mark + "  " + speech.alarms().of(alarm));
  }

  @Override
  public void trip(TripFigures figures) {
    String at = figures.atMs() == null ? "" : millis(figures.atMs()) + "  ";
    StringBuilder line = new StringBuilder(speech.say("cause." + figures.cause()));
    if (figures.selfTestBits() != 0) {
      line.append(", ").append(speech.in(SelfTestWords.of(figures.selfTestBits())));
    }
    if (figures.value() != null) {
      line.append(", ").append(speech.figures().value(figures.value(), figures.unit()));
    }
    if (figures.limit() != null) {
      String limit = speech.figures().value(figures.limit(), figures.unit());
      line.append(", ").append(speech.in(Said.of("run.limit", limit)));
    }
    if (figures.limitedMs() != null) {
      String ms = speech.number("%.3g", figures.limitedMs());
      line.append(", ").append(speech.in(Said.of("run.limited", ms)));
    }
    say(at + speech.in(Said.of("run.tripped", line.toString())) + afterOff);
  }

  @Override
  public void on() {
    closed = true;
    say(millis(0) + "  " + speech.in(Said.of("run.on")));
  }

  @Override
  public void off(OffCause by, double atMs) {
    String who = RunWords.offBy(by);
    String when = known(atMs) ? millis(atMs) : speech.in(Said.of("run.before"));
    Worded what = Said.of(who == null ? "run.off.look" : "run.off." + who);
    String proof = who == null || !closed ? "" : "; " + speech.in(Said.of("run.off.unproven"));
    say(when + "  " + speech.in(what) + proof + afterOff);
  }

  @Override
  public void openingSeen(double atMs) {
    say(at(atMs) + "  " + speech.in(Said.of("run.off.seen")));
  }

  @Override
  public void mark(String text, double atMs) {
    say(at(atMs) + "  " + speech.in(Said.of("run.mark", text)));
  }

  @Override
  public void happened(Happening what, double atMs) {
    say(at(atMs) + "  " + speech.in(RunWords.happened(what)));
  }

  @Override
  public void told(ProbeEvent.Told event, double atMs) {
    say(speech.told().line(event));
  }

  @Override
  public void link(ProbeEvent.LinkState state, String text, double atMs) {
    String key = "run.cable." + state.name().toLowerCase(Locale.ROOT).replace('_', '-');
    say(at(atMs) + "  " + speech.in(Said.of(key, text)));
  }

  @Override
  public void log(ProbeEvent.LogChanged event, double atMs) {
    Object text = event.words() == null ? event.text() : event.words();
    say(at(atMs) + "  " + speech.in(Said.of("run.log", text)));
  }

  /** Times count from the closing: before one that nobody knows yet there is none. */
  private boolean known(double atMs) {
    return closed || atMs < 0;
  }

  private String at(double atMs) {
    return known(atMs) ? millis(atMs) : "  " + speech.in(Said.of("run.not-yet"));
  }

  private String millis(double atMs) {
    return speech.number("%9.1f ms", atMs);
  }

  @Override
  public boolean wantsFigures() {
    return readings;
  }

  @Override
  public void figures(ReadingFigures figures) {
    StringBuilder line =
        new StringBuilder(
            speech.number(
                "%s  %.4f A  %.2f V", at(figures.atMs()), figures.supplyA(), figures.supplyV()));
    for (ReadingFigures.RailVolts rail : figures.rails()) {
      line.append(speech.number("  %d: %.2f V", rail.rail(), rail.volts()));
    }
    say(line.toString());
  }

  @Override
  public void otherRules(OtherRules rules) {
    String changed = String.join(", ", rules.changed());
    say(
        changed.isEmpty()
            ? Said.of("rules.same", rules.stored(), rules.now())
            : Said.of("rules.differ", rules.stored(), rules.now(), changed));
  }

  @Override
  public void beside(String sheet, List<WhatIfReport.Beside> rows) {
    say(Said.of("beside", sheet));
    if (rows.isEmpty()) {
      say(Said.of("beside.nothing"));
    }
    for (WhatIfReport.Beside row : rows) {
      String rule = SummaryText.text("%-28s", row.rule() + of(row.railName()));
      say(
          Said.of(
              row.cause() == null ? "beside.row" : "beside.row.off",
              rule,
              raised(row.thenAtMs()),
              raised(row.wouldAtMs())));
    }
    say(Said.of("beside.end"));
  }

  private String of(String railName) {
    return railName == null ? "" : speech.in(Said.of("beside.of", railName));
  }

  private Worded raised(Double ms) {
    return ms == null
        ? Said.of("beside.not-raised")
        : Said.of("beside.at", speech.number("%.1f", ms));
  }

  @Override
  public void summary(Summary summary, FigureList figures) {
    for (String line : SummaryText.lines(summary, figures, sheet, speech)) {
      out.println(line);
    }
    out.flush();
  }

  @Override
  public boolean forPeople() {
    return true;
  }

  private void say(Worded words) {
    say(speech.in(words));
  }

  private void say(String line) {
    out.println(line);
    out.flush();
  }
}
