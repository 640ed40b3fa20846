package firstamp.window.pages;

import firstamp.app.Desk;
import firstamp.app.SetList;
import firstamp.log.BenchLog;
import firstamp.log.PowerUpEntry;
import firstamp.window.page.Tools;
import firstamp.window.present.HomePresenter;
import firstamp.window.present.Reminders;
import firstamp.window.widgets.Pieces;
import firstamp.window.widgets.WindowTheme;
import firstamp.window.words.Words;
import java.awt.BorderLayout;
import java.nio.file.Files;
import java.time.ZoneId;
import java.util.List;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JTextArea;

/** A line on the first screen that offers a step with the probe box, and can be put off. */
final class ReminderBar {
  private static final int TEXT_WIDTH = 830;

  private final Tools tools;
  private final JPanel bar;
  private final JTextArea text;
  private final HomePresenter dates;

  ReminderBar(Tools tools, Runnable go) {
    this.tools = tools;
    Pieces pieces = tools.pieces();
    dates = new HomePresenter(tools.words(), tools.numbers(), ZoneId.systemDefault());
    bar = pieces.sheet("reminder", new BorderLayout(14, 0));
    bar.setBorder(
        BorderFactory.createCompoundBorder(
            BorderFactory.createMatteBorder(0, 8, 0, 0, WindowTheme.colour(tools.palette().ask())),
            BorderFactory.createEmptyBorder(6, 14, 6, 8)));
    text = pieces.prose("reminder-text", "", WindowTheme.READING_POINTS, TEXT_WIDTH);
    bar.add(text, BorderLayout.CENTER);
    bar.add(
        pieces.row(pieces.plain("reminder.go", go), pieces.plain("reminder.later", this::later)),
        BorderLayout.EAST);
    bar.setVisible(false);
  }

  JComponent component() {
    return bar;
  }

  /** Looks what is due. */
  void look() {
    Desk desk = tools.desk();
    tools
        .shell()
        .aside(
            () -> {
              List<PowerUpEntry> entries =
                  Files.exists(desk.log())
                      ? BenchLog.openForReading(desk.log(), desk.time()).list()
                      : List.of();
              List<PowerUpEntry> real =
                  entries.stream().filter(entry -> !SetList.isEmulated(entry)).toList();
              return Reminders.due(desk.settings(), real, desk.time().epochMillis());
            },
            this::show,
            failed -> bar.setVisible(false));
  }

  void show(Reminders.Offer offer) {
    bar.setVisible(offer.what() != Reminders.What.NOTHING);
    Words words = tools.words();
    String said =
        switch (offer.what()) {
          case NOTHING -> "";
          case AFTER_TRIP ->
              words.get(
                  "reminder.trip",
                  tools.numbers().amps(offer.amps()).toString(),
                  dates.date(offer.epochMs()));
          case BUILT -> words.get("reminder.built");
          case MONTH -> words.get("reminder.month", dates.date(offer.epochMs()));
          case CALIBRATE -> words.get("reminder.calibrate");
        };
    Pieces.say(text, said, TEXT_WIDTH);
    bar.revalidate();
  }

  private void later() {
    Desk desk = tools.desk();
    bar.setVisible(false);
    tools
        .shell()
        .aside(
            () -> {
              desk.settings()
                  .withRemindFrom(desk.time().epochMillis() + Reminders.LATER_MS)
                  .save(desk.folder());
              return true;
            },
            done -> {},
            failed -> bar.setVisible(true));
  }
}
