package firstamp.cli.output;

import firstamp.account.FigureList;
import firstamp.analysis.figures.InrushExpected;
import firstamp.model.Alarm;
import firstamp.model.Happening;
import firstamp.model.JobSheet;
import firstamp.model.OffCause;
import firstamp.model.ProbeEvent;
import firstamp.model.ProbeHello;
import firstamp.model.Summary;
import firstamp.model.text.Numbers;
import firstamp.pipeline.ReadingFigures;
import firstamp.pipeline.TripFigures;
import firstamp.study.OtherRules;
import firstamp.study.RulesBeside;
import firstamp.study.ToldWords;
import java.io.PrintStream;
import java.util.List;

/** A run as sentences, one a line. */
public final class TextRunOutput implements RunOutput {
  private final PrintStream out;
  private final PrintStream err;
  private final boolean readings;
  private final String afterOff;
  private final boolean countsDown;
  private final JobSheet sheet;
  private Double lookOhm;
  private boolean closed;

  /** Sentences on a stream, without a forecast of the inrush. */
  public TextRunOutput(
      PrintStream out, PrintStream err, boolean readings, boolean countsDown, String afterOff) {
    this(out, err, readings, countsDown, afterOff, null);
  }

  /**
   * Sentences on a stream.
   *
   * @param sheet by which the inrush is forecast after the first look, null = it is not
   * @param countsDown whether the seconds before switching on are counted down
   * @param afterOff what stays live once the switch is open, whole sentences; empty = nothing
   */
  public TextRunOutput(
      PrintStream out,
      PrintStream err,
      boolean readings,
      boolean countsDown,
      String afterOff,
      JobSheet sheet) {
    this.sheet = sheet;
    this.countsDown = countsDown;
    this.out = out;
    this.err = err;
    this.readings = readings;
    this.afterOff = afterOff.isEmpty() ? "" : ". " + afterOff;
  }

  @Override
  public void started(Integer powerUp, String uuid, String set, ProbeHello hello, boolean observe) {
    lookOhm = hello.lookOhm();
    say("%s on %s%s", set, hello.kind(), powerUp == null ? "" : ", power-up " + powerUp);
  }

  @Override
  public void countdown(int seconds) {
    if (seconds > 0 && !countsDown) {
      return;
    }
    err.println(seconds == 0 ? "switching on" : "switching on in " + seconds + " s; Ctrl-C stops");
  }

  @Override
  public void look(Summary.LookFigures figures) {
    StringBuilder line = new StringBuilder("first look: ").append(figures.result());
    for (FigureList.Figure figure : FigureList.of(figures).figures()) {
      String name = figure.key().equals("look.supplyV") ? "supply " : "";
      line.append(", ").append(name).append(figure.text());
    }
    say("%s", line);
    boolean closes = List.of("clear", "low").contains(figures.result());
    InrushExpected inrush =
        sheet == null || !closes ? null : InrushExpected.of(sheet, figures, lookOhm);
    if (inrush != null) {
      String spike =
          inrush.limitA() == null
              ? ""
              : ", the supply's limit; its own capacitor adds a spike of up to "
                  + Numbers.amps(inrush.peakA());
      say(
          "inrush expected: up to %s for about %.2g ms%s",
          Numbers.amps(inrush.limitA() == null ? inrush.peakA() : inrush.limitA()),
          inrush.ms(),
          spike);
    }
  }

  @Override
  public void alarm(Alarm alarm) {
    String mark =
        switch (alarm.state()) {
          case UNACKNOWLEDGED -> "ALARM";
          case ACKNOWLEDGED -> "seen ";
          case CLEARED_UNACKNOWLEDGED -> "cleared, not acknowledged:";
          case CLEARED -> "cleared:";
        };
    say("%9.1f ms  %s  %s", alarm.changedMs(), mark, alarm.text());
  }

  @Override
  public void trip(TripFigures figures) {
    String at = figures.atMs() == null ? "" : SummaryText.text("%9.1f ms  ", figures.atMs());
    String value =
        figures.value() == null ? "" : ", " + Numbers.inUnit(figures.value(), figures.unit());
    String limit =
        figures.limit() == null ? "" : ", limit " + Numbers.inUnit(figures.limit(), figures.unit());
    String limited =
        figures.limitedMs() == null
            ? ""
            : SummaryText.text(", the limiter held it for %.3g ms", figures.limitedMs());
    say("%sSWITCHED ITSELF OFF: %s%s%s%s%s", at, figures.cause(), value, limit, limited, afterOff);
  }

  @Override
  public void on() {
    closed = true;
    say("%9.1f ms  on", 0.0);
  }

  @Override
  public void off(OffCause by, double atMs) {
    String who = RunWords.offBy(by);
    String what = who == null ? ": the first look does not let the switch close" : " by " + who;
    say("%s  off%s%s", known(atMs) ? at(atMs) : "before the switch closed", what, afterOff);
  }

  @Override
  public void mark(String text, double atMs) {
    say("%s  mark %s", at(atMs), text);
  }

  @Override
  public void happened(Happening what, double atMs) {
    say("%s  %s", at(atMs), RunWords.happened(what));
  }

  @Override
  public void told(ProbeEvent.Told event, double atMs) {
    say("%s", new ToldWords().line(event));
  }

  @Override
  public void link(ProbeEvent.LinkState state, String text, double atMs) {
    say("%s  cable: %s", at(atMs), text);
  }

  @Override
  public void log(boolean logging, String text, double atMs) {
    say("%s  log: %s", at(atMs), text);
  }

  /** Times count from the closing: before one that nobody knows yet there is none. */
  private boolean known(double atMs) {
    return closed || atMs < 0;
  }

  private String at(double atMs) {
    return known(atMs) ? SummaryText.text("%9.1f ms", atMs) : "  not on yet";
  }

  @Override
  public boolean wantsFigures() {
    return readings;
  }

  @Override
  public void figures(ReadingFigures figures) {
    StringBuilder line =
        new StringBuilder(
            SummaryText.text(
                "%s  %.4f A  %.2f V", at(figures.atMs()), figures.supplyA(), figures.supplyV()));
    for (ReadingFigures.RailVolts rail : figures.rails()) {
      line.append(SummaryText.text("  %d: %.2f V", rail.rail(), rail.volts()));
    }
    say("%s", line);
  }

  @Override
  public void otherRules(OtherRules rules) {
    String changed = String.join(", ", rules.changed());
    say(
        "Judged by version %d of the rules, now by %d. %s",
        rules.stored(),
        rules.now(),
        changed.isEmpty() ? "Nothing comes out differently." : "Differs now: " + changed + ".");
  }

  @Override
  public void beside(String sheet, List<RulesBeside.Beside> rows) {
    say("With %s, compared with the original run:", sheet);
    if (rows.isEmpty()) {
      say("  nothing raised then, and nothing now");
    }
    for (RulesBeside.Beside row : rows) {
      String of = row.railName() == null ? "" : " of " + row.railName();
      String would = row.cause() == null ? "" : " (it would have switched itself off)";
      say(
          "  %-28s then %s, now %s%s",
          row.rule() + of, at(row.thenAtMs()), at(row.wouldAtMs()), would);
    }
    say("  What would have come after an earlier off is not in the record.");
  }

  private static String at(Double ms) {
    return ms == null ? "not raised" : SummaryText.text("at %.1f ms", ms);
  }

  @Override
  public void summary(Summary summary, FigureList figures) {
    for (String line : SummaryText.lines(summary, figures)) {
      out.println(line);
    }
    out.flush();
  }

  @Override
  public boolean forPeople() {
    return true;
  }

  private void say(String format, Object... values) {
    out.println(SummaryText.text(format, values));
    out.flush();
  }
}
