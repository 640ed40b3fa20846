package firstamp.window.pages;

import firstamp.window.page.Page;
import firstamp.window.page.Tools;
import firstamp.window.widgets.Pieces;
import firstamp.window.widgets.WindowTheme;
import java.awt.BorderLayout;
import javax.swing.JComponent;
import javax.swing.JPanel;

/** Asks before the program ends: Enter ends it, 0 or Escape goes back to where one was. */
public final class LeavePage implements Page {
  private final Tools tools;
  private final Page from;
  private final JPanel page;

  public LeavePage(Tools tools, Page from) {
    this.tools = tools;
    this.from = from;
    Pieces pieces = tools.pieces();
    page = pieces.page("leave", new BorderLayout(0, 16));
    JPanel sheet = pieces.sheet("leave-sheet", new BorderLayout());
    sheet.add(
        pieces.prose(
            "leave-text", tools.words().get("leave.text"), WindowTheme.READING_POINTS, 1100),
        BorderLayout.NORTH);
    page.add(
        pieces.label("leave-title", tools.words().get("leave.title"), true, 34),
        BorderLayout.NORTH);
    page.add(sheet, BorderLayout.CENTER);
    page.add(
        pieces.row(pieces.main("leave.close", this::goOn), pieces.plain("leave.stay", this::back)),
        BorderLayout.SOUTH);
  }

  @Override
  public String name() {
    return "leave";
  }

  @Override
  public String title() {
    return tools.words().get("leave.title");
  }

  @Override
  public JComponent component() {
    return page;
  }

  @Override
  public void goOn() {
    tools.shell().close();
  }

  @Override
  public void back() {
    tools.shell().open(from);
  }

  @Override
  public void end() {
    from.end();
  }
}
